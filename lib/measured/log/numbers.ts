/** Arrays of numbers that grow. @module */

/** Numbers in the order they come. */
export class GrowingNumbers {
  /** number of them */
  length = 0;
  private held = new Float64Array(1024);
  /** Adds one. */
  push(value: number): void {
    if (this.length === this.held.length) {
      const wider = new Float64Array(2 * this.length);
      wider.set(this.held);
      this.held = wider;
    }
    this.held[this.length++] = value;
  }
  /** All so far, without a copy; of no use after the next push. */
  view(): Float64Array {
    return this.held.subarray(0, this.length);
  }
}

/**
 * The middle of numbers; NaN of none.
 *
 * @param values finite, any order
 */
export function middle(values: readonly number[] | Float64Array): number {
  if (values.length === 0) return NaN;
  const sorted = Float64Array.from(values).sort();
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/**
 * A quantile of numbers; NaN of none.
 *
 * @param values finite, any order
 * @param share 0 to 1
 */
export function quantile(values: readonly number[] | Float64Array, share: number): number {
  if (values.length === 0) return NaN;
  const sorted = Float64Array.from(values).sort();
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}
