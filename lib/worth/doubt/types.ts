/** What is said of how sure the money is. @module */

/** An input that is not known exactly. */
export type DoubtedInput =
  | "first cost"
  | "heat saved"
  | "fans' electricity"
  | "price of fuel"
  | "price of electricity"
  | "discount rate";

/** Low and high end of a band of 95 %. */
export type Band = readonly [low: number, high: number];

/** How much of the scatter of the net savings an input accounts for. */
export interface DoubtShare {
  /** the input */
  readonly input: DoubtedInput;
  /** half width of its range: share of the value, or of itself for a rate */
  readonly range: number;
  /** share of the variance alone */
  readonly first: number;
  /** share of the variance with all others together */
  readonly total: number;
}

/** How sure the money is; bands of 95 % in the unit of each figure. */
export interface MoneyDoubt {
  /** money of the first cost less grants */
  readonly capital: Band;
  /** money of net savings, present value */
  readonly netSavings: Band;
  /** money for a kWh of the heat saved; null where none is saved */
  readonly costOfHeat: Band | null;
  /** years of simple payback; the high end null where it never pays, all null where it never does */
  readonly payback: readonly [low: number | null, high: number | null];
  /** ratio of the fuel's price to today's at which the store just pays; null where none does */
  readonly breakEvenFuel: Band | null;
  /** share of the samples in which the verdict is another */
  readonly chanceVerdictFlips: number;
  /** inputs, the one that moves net savings most first */
  readonly shares: readonly DoubtShare[];
}
