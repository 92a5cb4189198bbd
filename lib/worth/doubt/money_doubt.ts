/**
 * How sure the money is: bands, what moves it most, and how often the verdict would be another.
 *
 * @module
 */
import { ascending, quantileSorted } from "d3-array";
import { breakEvenFuel, judgeMoney, type StoreMoney } from "../earnings.ts";
import type { WorthInputs } from "../fields.ts";
import { heatWorth } from "../money/plans.ts";
import type { VerdictWord } from "../verdict.ts";
import { sensitivityIndices, sensitivityPoints } from "./indices.ts";
import { valueAt } from "./sampling.ts";
import type { Band, DoubtedInput, MoneyDoubt } from "./types.ts";

/** Rows of each sample; all points are (2 + inputs) times as many. */
const SAMPLES = 512;
const SEED = 20;

/** What a sample changes of the facts of the verdict. */
export interface SampledFacts {
  /** kWh a year of heat saved */
  readonly savedHeat: number;
  /** money for a kWh saved; null where none is */
  readonly costOfHeat: number | null;
  /** money that a kWh of heat from the heater is worth over the years */
  readonly heatWorth: number;
}

type Ranges = Pick<
  WorthInputs,
  | "doubtFirstCost"
  | "doubtHeatSaved"
  | "doubtFanEnergy"
  | "doubtFuelPrice"
  | "doubtElectricityPrice"
  | "doubtDiscountRate"
>;

/** Each input with its range and what a sampled deviation of it does. */
function doubted(ranges: Ranges): readonly (readonly [
  DoubtedInput,
  number,
  (money: StoreMoney, deviation: number) => StoreMoney,
])[] {
  return [
    ["first cost", ranges.doubtFirstCost, (money, deviation) => ({
      ...money,
      first: money.first * (1 + deviation),
      rows: money.rows.map((row) =>
        row.cost === null ? row : { ...row, cost: row.cost * (1 + deviation) }
      ),
    })],
    ["heat saved", ranges.doubtHeatSaved, (money, deviation) => {
      const { backupHeat, backupHeatNoFan } = money.energy;
      const saved = (backupHeatNoFan - backupHeat) * (1 + deviation);
      return { ...money, energy: { ...money.energy, backupHeat: backupHeatNoFan - saved } };
    }],
    ["fans' electricity", ranges.doubtFanEnergy, (money, deviation) => ({
      ...money,
      energy: { ...money.energy, fanEnergy: money.energy.fanEnergy * (1 + deviation) },
    })],
    ["price of fuel", ranges.doubtFuelPrice, (money, deviation) => {
      const { heat } = money.parts;
      const parts = { ...money.parts, heat: { ...heat, price: heat.price * (1 + deviation) } };
      return { ...money, parts };
    }],
    ["price of electricity", ranges.doubtElectricityPrice, (money, deviation) => {
      const { electricity } = money.parts;
      const price = electricity.price * (1 + deviation);
      return { ...money, parts: { ...money.parts, electricity: { ...electricity, price } } };
    }],
    ["discount rate", ranges.doubtDiscountRate, (money, deviation) => {
      const { terms } = money.parts;
      return {
        ...money,
        parts: { ...money.parts, terms: { ...terms, rate: terms.rate + deviation } },
      };
    }],
  ];
}

/**
 * Samples the money of the store. Each input lies in a triangle about its value, as wide to either
 * side as its range; inputs do not hang together.
 *
 * @param money of the store
 * @param ranges half widths, of the worth section
 * @param verdictOf the verdict with changed facts
 */
export function moneyDoubt(
  money: StoreMoney,
  ranges: Ranges,
  verdictOf: (facts: SampledFacts) => VerdictWord,
): MoneyDoubt {
  const inputs = doubted(ranges);
  const tried = (row: readonly number[]): StoreMoney =>
    inputs.reduce((changed, [, range, change], column) => {
      const triangle = { shape: "triangle", low: -range, mode: 0, high: range } as const;
      return change(changed, valueAt(triangle, row[column]!));
    }, money);
  const points = sensitivityPoints(SAMPLES, inputs.length, SEED);
  const savings = (rows: readonly (readonly number[])[]) =>
    rows.map((row) => judgeMoney(tried(row)).earned.netSavings);
  const sampled = [...points.first, ...points.second].map((row) => {
    const changed = tried(row);
    return { changed, judged: judgeMoney(changed) };
  });
  const netSavings = sampled.map(({ judged }) => judged.earned.netSavings);
  const indices = sensitivityIndices({
    first: netSavings.slice(0, SAMPLES),
    second: netSavings.slice(SAMPLES),
    mixed: points.mixed.map(savings),
  });
  const central = verdictOf(factsOf(money, judgeMoney(money)));
  const costs = sampled.map(({ judged }) => judged.costOfHeat);
  const evens = sampled.map(({ judged }) => breakEvenFuel(judged.earned));
  return {
    capital: band(sampled.map(({ judged }) => judged.capital)),
    netSavings: band(netSavings),
    costOfHeat: costs.every((cost) => cost !== null) ? band(costs) : null,
    payback: paybackBand(sampled.map(({ judged }) => judged.earned.simplePayback)),
    breakEvenFuel: evens.every((even) => even !== null) ? band(evens) : null,
    chanceVerdictFlips:
      sampled.filter(({ changed, judged }) => verdictOf(factsOf(changed, judged)) !== central)
        .length / sampled.length,
    shares: inputs.map(([input, range], column) => ({ input, range, ...indices[column]! }))
      .toSorted((a, b) => b.total - a.total),
  };
}

function factsOf(
  { energy, parts }: StoreMoney,
  { costOfHeat }: ReturnType<typeof judgeMoney>,
): SampledFacts {
  return {
    savedHeat: energy.backupHeatNoFan - energy.backupHeat,
    costOfHeat,
    heatWorth: heatWorth(parts),
  };
}

function band(values: readonly number[]): Band {
  const sorted = values.toSorted(ascending);
  return [quantileSorted(sorted, 0.025)!, quantileSorted(sorted, 0.975)!];
}

/** A payback that is never reached counts as later than any other. */
function paybackBand(values: readonly (number | null)[]): MoneyDoubt["payback"] {
  const sorted = values.map((value) => value ?? Infinity).toSorted(ascending);
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]!;
  return [at(0.025), at(0.975)].map((value) => value === Infinity ? null : value) as [
    number | null,
    number | null,
  ];
}
