/**
 * What a plan earns against another: net savings, ratio, rate of return, payback.
 *
 * Source: life-cycle costing manual [nist-hb135-1995].
 *
 * @module
 */
import { cumsum as runningSum, sum } from "d3-array";
import { presentValueFactor, uniformPresentValueFactor } from "./factors.ts";
import {
  type CostPlan,
  type LifeCycleCost,
  lifeCycleCost,
  type MoneyTerms,
  type ValueFactors,
  valueFactors,
} from "./life_cycle.ts";

/** A plan against another one. */
export interface Earnings {
  /** of the plan compared with, present values in the currency of the prices */
  readonly base: LifeCycleCost;
  /** of the plan itself, present values in the currency of the prices */
  readonly plan: LifeCycleCost;
  /** life-cycle cost saved, in the currency of the prices */
  readonly netSavings: number;
  /** more investment than the other plan, present value in the currency of the prices */
  readonly extraInvestment: number;
  /** less operation than the other plan, present value in the currency of the prices */
  readonly operationSaved: number;
  /** operation saved over extra investment, ratio; null where nothing more is invested */
  readonly savingsToInvestment: number | null;
  /**
   * Return on the extra investment a year, share, with savings invested again at the discount rate;
   * null where nothing more is invested or nothing is saved.
   */
  readonly adjustedRateOfReturn: number | null;
  /** years until undiscounted savings repay the extra first cost; null where they never do */
  readonly simplePayback: number | null;
  /** the same with discounted amounts, years */
  readonly discountedPayback: number | null;
}

/**
 * Compares a plan with another one over the same years.
 *
 * NS = LCC₀ − LCC, SIR = ΔE/ΔI, AIRR = (1 + d) SIR^(1/N) − 1
 *
 * @param plan the plan
 * @param base what it is compared with
 * @param terms rate and years
 * @param factors of the amounts; the closed forms where not given
 * @returns savings, ratio, rate and paybacks
 */
export function compareCosts(
  plan: CostPlan,
  base: CostPlan,
  terms: MoneyTerms,
  factors: ValueFactors = valueFactors(terms),
): Earnings {
  const [own, other] = [lifeCycleCost(plan, terms, factors), lifeCycleCost(base, terms, factors)];
  const investment = ({ initial, replacements, residual }: LifeCycleCost) =>
    initial + replacements - residual;
  const extraInvestment = investment(own) - investment(other);
  const operationSaved = sum(other.yearly) - sum(own.yearly);
  const ratio = extraInvestment > 0 ? operationSaved / extraInvestment : null;
  return {
    base: other,
    plan: own,
    netSavings: operationSaved - extraInvestment,
    extraInvestment,
    operationSaved,
    savingsToInvestment: ratio,
    adjustedRateOfReturn: ratio === null || ratio <= 0
      ? null
      : (1 + terms.rate) * ratio ** (1 / terms.years) - 1,
    simplePayback: payback(plan, base, { ...terms, rate: 0 }),
    discountedPayback: payback(plan, base, terms),
  };
}

/**
 * Years until what was saved, less what was spent on replacements, repays the extra first cost for
 * good; within a year savings come in evenly. What is left at the end of the study is not counted.
 */
function payback(plan: CostPlan, base: CostPlan, terms: MoneyTerms): number | null {
  const gained = yearlyGains(plan, base, terms);
  const balance = [...runningSum([base.initial - plan.initial, ...gained])];
  const lastInDebt = balance.findLastIndex((money) => money < 0);
  if (lastInDebt < 0) return 0;
  if (lastInDebt === terms.years) return null;
  return lastInDebt - balance[lastInDebt]! / gained[lastInDebt]!;
}

/** What each year brings more than with the other plan, discounted to today; money by year from the first. */
export function yearlyGains(plan: CostPlan, base: CostPlan, { rate, years }: MoneyTerms): number[] {
  return Array.from({ length: years }, (_, before) => {
    const year = before + 1;
    const spent = (one: CostPlan) =>
      sum(one.yearly, ({ amount, escalation }) => amount * (1 + escalation) ** year) +
      sum(one.replacements, (bought) => bought.year === year ? bought.amount : 0);
    return (spent(base) - spent(plan)) * presentValueFactor(rate, year);
  });
}

/**
 * Levelised cost of what a plan yields every year: the price at which its yield pays for it.
 *
 * c = (I + R − S + Σ A·UPV*)/(E·UPV)
 *
 * Source: quotient of present values, as in life-cycle costing [nist-hb135-1995].
 *
 * @param plan amounts in money of today
 * @param yieldPerYear what it yields each year, such as kWh; above 0
 * @param terms rate and years
 * @returns money for one unit of the yield; null where nothing is yielded
 */
export function levelisedCost(
  plan: CostPlan,
  yieldPerYear: number,
  terms: MoneyTerms,
): number | null {
  if (!(yieldPerYear > 0)) return null;
  return lifeCycleCost(plan, terms).total /
    (yieldPerYear * uniformPresentValueFactor(terms.rate, terms.years));
}
