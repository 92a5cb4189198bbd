/** What a year of a design is worth in money of today. @module */
import { worthMoney } from "../compute.ts";
import { escalatingPresentValueFactor, uniformPresentValueFactor } from "../money/factors.ts";
import type { EnergyPrice } from "../money/plans.ts";
import type { DesignQuestion } from "./types.ts";

/** Money of today, in the currency of the prices. */
export interface PresentValues {
  /** money for a kWh of heat saved in every year */
  readonly heat: number;
  /** money for a kWh of electricity in every year */
  readonly electricity: number;
  /** ratio of first cost and its upkeep over the years to the first cost */
  readonly upkeep: number;
}

/** All nought, and upkeep alone, where energy has no price. */
export function presentValues({ worth }: DesignQuestion): PresentValues {
  const { parts } = worthMoney(worth);
  if (parts === null) return { heat: 0, electricity: 0, upkeep: 1 };
  const { rate, years } = parts.terms;
  const ofEachYear = ({ price, escalation }: EnergyPrice) =>
    price * escalatingPresentValueFactor(rate, escalation, years);
  return {
    heat: ofEachYear(parts.heat),
    electricity: ofEachYear(parts.electricity),
    upkeep: 1 + worth.inputs.upkeep * uniformPresentValueFactor(rate, years),
  };
}
