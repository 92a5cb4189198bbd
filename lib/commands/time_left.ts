/** How long a study still takes, from what its pieces usually take and how fast these went. @module */

/**
 * Seconds of one core that pieces took on the demo study, rounded; those not named take next to
 * nothing, a notebook `NOTEBOOK`. Only their proportions matter.
 */
const USUAL: Readonly<Record<string, number>> = {
  house: 1,
  ranking: 6,
  store: 11,
  ways: 6,
  variants: 18,
  odds: 90,
};
const NOTEBOOK = 1.5;
const SMALL = 0.1;

/** s before which nothing is said: too little has been seen. */
const SOON = 1;

/** An estimate that learns. */
export interface TimeLeft {
  /** A piece is done; one that was there already says nothing of the speed. */
  done(piece: string, instant?: boolean): void;
  /** ", about 12 s left", or nothing where that is not known. */
  text(): string;
  /** True for a piece that takes its time. */
  heavy(piece: string): boolean;
}

/**
 * Estimate over some pieces.
 *
 * @param pieces names of results and notebooks
 * @param now s, a clock
 */
export function timeLeft(
  pieces: readonly string[],
  now: () => number = () => performance.now() / 1000,
): TimeLeft {
  const usual = (piece: string) => USUAL[piece] ?? (/^\d/.test(piece) ? NOTEBOOK : SMALL);
  const open = new Set(pieces);
  const start = now();
  let seen = 0;
  return {
    done: (piece, instant = false) => {
      if (open.delete(piece) && !instant) seen += usual(piece);
    },
    text: () => {
      const spent = now() - start;
      if (open.size === 0 || seen < SOON || spent < SOON) return "";
      const ahead = [...open].reduce((sum, piece) => sum + usual(piece), 0);
      return `, about ${Math.max(1, Math.round(ahead * spent / seen))} s left`;
    },
    heavy: (piece) => usual(piece) >= 1,
  };
}
