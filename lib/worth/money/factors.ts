/**
 * Present value factors: what an amount of money in a later year is worth today.
 *
 * Amounts are in the money of today; with a real rate (without inflation) the results are too.
 *
 * @module
 */
import { requireInRange } from "../../basics/mod.ts";

/**
 * Present value of one unit of money paid at the end of a year.
 *
 * SPV = (1 + d)^−n
 *
 * Source: life-cycle costing manual [nist-hb135-1995].
 *
 * ```ts
 * import { presentValueFactor } from "./factors.ts";
 * console.assert(Math.abs(presentValueFactor(0.03, 12) - 0.7014) < 5e-5);
 * ```
 *
 * @param rate discount rate a year, share, above −1
 * @param year count of years from today, 0 or more
 * @returns share of the amount
 */
export function presentValueFactor(rate: number, year: number): number {
  requireInRange("discount rate", rate, -0.5, 1, "a year");
  return (1 + rate) ** -year;
}

/**
 * Present value of one unit of money paid at the end of each of some years.
 *
 * UPV = (1 − (1 + d)^−n)/d
 *
 * Source: life-cycle costing manual [nist-hb135-1995].
 *
 * @param rate discount rate a year, share
 * @param years count of years
 * @returns ratio to the yearly amount
 */
export function uniformPresentValueFactor(rate: number, years: number): number {
  return escalatingPresentValueFactor(rate, 0, years);
}

/**
 * Present value of a yearly amount whose price rises: one unit at today's price, paid at the end of
 * each of some years at the price of that year.
 *
 * UPV* = q (1 − qⁿ)/(1 − q), q = (1 + e)/(1 + d)
 *
 * Source: life-cycle costing manual [nist-hb135-1995].
 *
 * @param rate discount rate a year, share
 * @param escalation rise of the price a year beyond inflation where the rate is real, share
 * @param years count of years, 0 or more
 * @returns ratio to the yearly amount at today's price
 */
export function escalatingPresentValueFactor(
  rate: number,
  escalation: number,
  years: number,
): number {
  requireInRange("price escalation", escalation, -0.5, 1, "a year");
  const ratio = (1 + escalation) * presentValueFactor(rate, 1);
  const log = Math.log(ratio);
  return log === 0 ? years : ratio * Math.expm1(years * log) / Math.expm1(log);
}

/**
 * Yearly amount that repays one unit of money with interest over some years.
 *
 * CRF = d/(1 − (1 + d)^−n)
 *
 * Source: the inverse of the uniform factor [nist-hb135-1995].
 *
 * @param rate discount rate a year, share
 * @param years count of years, above 0
 * @returns share of the amount a year
 */
export function capitalRecoveryFactor(rate: number, years: number): number {
  requireInRange("years", years, 1e-9, 1000, "years");
  return 1 / uniformPresentValueFactor(rate, years);
}
