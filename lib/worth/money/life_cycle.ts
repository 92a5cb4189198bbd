/**
 * Life-cycle cost of a plan, and what one plan earns against another.
 *
 * Source: life-cycle costing manual [nist-hb135-1995]: investment is what is spent on the thing itself
 * (first cost, replacements, less what is left of it at the end), operation what it costs to run it.
 *
 * @module
 */
import { sum } from "d3-array";
import { InputError } from "../../basics/mod.ts";
import { escalatingPresentValueFactor, presentValueFactor } from "./factors.ts";

/** An amount that is paid once, in money of today. */
export interface OneAmount {
  /** what is paid for */
  readonly name: string;
  /** year at whose end it is paid, a count from 1 to the study's years */
  readonly year: number;
  /** in the currency of the prices */
  readonly amount: number;
}

/** An amount that is paid every year, in money of today. */
export interface YearlyAmount {
  /** what is paid for */
  readonly name: string;
  /** in the currency of the prices, a year */
  readonly amount: number;
  /** rise of its price a year, share; 0 where it stays as it is */
  readonly escalation: number;
}

/** What a plan costs over the years of the study. */
export interface CostPlan {
  /** paid today, in the currency of the prices */
  readonly initial: number;
  /** what must be bought again */
  readonly replacements: readonly OneAmount[];
  /** what the plan is still worth in the last year, in the currency of the prices */
  readonly residual: number;
  /** energy, upkeep and losses of each year */
  readonly yearly: readonly YearlyAmount[];
}

/** Terms under which plans are compared. */
export interface MoneyTerms {
  /** real discount rate a year, share */
  readonly rate: number;
  /** count of years looked at, 1 or more */
  readonly years: number;
}

/** Factors by which amounts are brought to today; those of the closed forms unless given. */
export interface ValueFactors {
  /** of an amount in a year, ratio */
  readonly single: (year: number) => number;
  /** of a yearly amount, ratio */
  readonly yearly: (amount: YearlyAmount) => number;
}

/** Present values of a plan, in the currency of the prices. */
export interface LifeCycleCost {
  /** money paid today */
  readonly initial: number;
  /** money of all replacements */
  readonly replacements: number;
  /** of what is left at the end, counted against the cost */
  readonly residual: number;
  /** money of each yearly amount, in the order of the plan */
  readonly yearly: readonly number[];
  /** money of all together */
  readonly total: number;
}

/** The factors of the closed forms. */
export function valueFactors({ rate, years }: MoneyTerms): ValueFactors {
  return {
    single: (year) => presentValueFactor(rate, year),
    yearly: ({ escalation }) => escalatingPresentValueFactor(rate, escalation, years),
  };
}

/**
 * Life-cycle cost: everything that a plan costs over the years, in money of today.
 *
 * LCC = I + Σ R·SPV − S·SPV_N + Σ A·UPV*
 *
 * @param plan amounts in money of today
 * @param terms rate and years
 * @param factors of the amounts; the closed forms where not given
 * @returns present values by part
 * @throws {InputError} where a replacement lies outside the years
 */
export function lifeCycleCost(
  plan: CostPlan,
  terms: MoneyTerms,
  factors: ValueFactors = valueFactors(terms),
): LifeCycleCost {
  for (const { name, year } of plan.replacements) {
    if (!Number.isInteger(year) || year < 1 || year > terms.years) {
      throw new InputError(
        `${name} is replaced in year ${year}: expected a whole year from 1 to ${terms.years}`,
      );
    }
  }
  const replacements = sum(plan.replacements, ({ amount, year }) => amount * factors.single(year));
  const residual = plan.residual * factors.single(terms.years);
  const yearly = plan.yearly.map((one) => one.amount * factors.yearly(one));
  return {
    initial: plan.initial,
    replacements,
    residual,
    yearly,
    total: plan.initial + replacements - residual + sum(yearly),
  };
}

/**
 * Years in which something with a life of its own is bought again within the years of a study.
 *
 * @param life years until it is worn out, above 0
 * @param years count of years of the study
 * @returns whole years, the last of them before the end of the study
 */
export function replacementYears(life: number, years: number): number[] {
  const list: number[] = [];
  for (let turn = 1; Math.ceil(turn * life) < years; turn++) list.push(Math.ceil(turn * life));
  return list;
}

/** Something with a life of its own; money in the currency of the prices. */
export interface WearingPart {
  /** what is bought */
  readonly name: string;
  /** money for one */
  readonly cost: number;
  /** years until it is bought again; null where it lasts */
  readonly life: number | null;
}

/**
 * What has to be bought again, and what is left at the end: of the last one bought the rest of its
 * life, in even parts.
 *
 * @param parts what the plan is made of
 * @param years count of years of the study
 */
export function wearOut(
  parts: readonly WearingPart[],
  years: number,
): Pick<CostPlan, "replacements" | "residual"> {
  const wearing = parts.filter((one): one is WearingPart & { life: number } => one.life !== null);
  return {
    replacements: wearing.flatMap(({ name, cost, life }) =>
      replacementYears(life, years).map((year) => ({ name, year, amount: cost }))
    ),
    residual: sum(wearing, ({ cost, life }) => cost * unusedLife(life, years)),
  };
}

function unusedLife(life: number, years: number): number {
  const bought = replacementYears(life, years).at(-1) ?? 0;
  return Math.max(0, (bought + life - years) / life);
}
