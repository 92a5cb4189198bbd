/** Which designs does no other one beat? @module */

/** What is paid and what is had for it. */
export interface PricedGain {
  /** money */
  readonly cost: number;
  /** more is better, in any one unit */
  readonly gain: number;
}

/**
 * True for each that no other one beats: gives at least as much for no more money, and more of one.
 * Of those that are alike in both, all stay.
 *
 * @param rows any number, of any one currency
 */
export function unbeaten(rows: readonly PricedGain[]): readonly boolean[] {
  const order = rows.map((_, k) => k).sort((a, b) =>
    rows[a]!.cost - rows[b]!.cost || rows[b]!.gain - rows[a]!.gain
  );
  const kept = rows.map(() => false);
  let last: PricedGain | null = null;
  for (const k of order) {
    const row = rows[k]!;
    const alike = last !== null && row.cost === last.cost && row.gain === last.gain;
    if (last !== null && row.gain <= last.gain && !alike) continue;
    kept[k] = true;
    last = row;
  }
  return kept;
}
