/** Stage: the law of leakage from several nights. @module */
import { InputError } from "../../basics/mod.ts";
import { estimateOf, type Stage, toldTogether, widened } from "./estimate.ts";
import { fitLinear } from "./linear_fit.ts";
import { showRange, showSi } from "../../units/mod.ts";

/** Air change of a night, with what drove it. */
export interface LeakageNight {
  /** air changes, 1/h */
  readonly rate: number;
  /** standard uncertainty, 1/h; equal weights where any is 0 or left out */
  readonly uncertainty?: number;
  /** K between house and outside, mean of the night */
  readonly difference: number;
  /** m/s, mean of the night */
  readonly wind: number;
}

/** K at which the study's `leakage` holds */
const AT_DIFFERENCE = 20;
/** the winds of the nights must differ by so much, m/s, to tell what wind does */
const LEAST_WIND_RANGE = 1;

/**
 * The law of the house model, n = n_calm·√(|ΔT|/20 K) + n_wind·v, from the air changes of nights.
 * Deviations come from the scatter of the nights about the law.
 *
 * @param nights at least 3; at least 2 where their winds do not differ, which fits the first term alone
 * @returns stage with `house.leakage` in 1/h and `house.leakageWind` in 1/h for each m/s; the second is
 * left out where the winds of the nights are too alike
 * @param windDoubt m/s, standard uncertainty that all winds have in common; 0 unless given: what the
 * anemometer is off by goes into the calm part
 * @throws InputError where the nights are too few
 */
export function leakageLaw(nights: readonly LeakageNight[], windDoubt = 0): Stage {
  const winds = nights.map(({ wind }) => wind);
  const range = Math.max(...winds) - Math.min(...winds);
  const windy = range >= LEAST_WIND_RANGE && nights.length > 3;
  if (nights.length < 3) {
    throw new InputError(
      `leakage: ${nights.length} nights; expected 3 or more: measure in other winds`,
    );
  }
  const stack = nights.map(({ difference }) => Math.sqrt(Math.abs(difference) / AT_DIFFERENCE));
  const weighed = nights.every(({ uncertainty }) => uncertainty !== undefined && uncertainty > 0);
  const fit = fitLinear(
    windy ? [stack, winds] : [stack],
    nights.map(({ rate }) => rate),
    nights.map((_, i) => i),
    weighed ? nights.map(({ uncertainty }) => 1 / uncertainty! ** 2) : undefined,
  );
  const what = [
    { name: "leakage in calm air", key: "house.leakage", unit: "1/h" },
    { name: "leakage by wind", key: "house.leakageWind", unit: "ach/(m/s)" },
  ];
  const byWind = windy ? Math.abs(fit.parameters[1]!) * windDoubt : 0;
  const estimates = fit.parameters.map((value, j) =>
    widened(
      estimateOf(what[j]!, value, fit.standardDeviations[j]!, fit.halfWidths[j]!),
      j === 0 ? byWind : 0,
    )
  );
  return {
    name: "leakage",
    estimates,
    correlation: fit.correlation,
    used: `${nights.length} nights with ` +
      `${showRange(Math.min(...winds), Math.max(...winds), "windSpeed")} of wind`,
    count: nights.length,
    places: [],
    cannotTell: [
      ...toldTogether(estimates.map(({ name }) => name), fit.correlation),
      ...windy ? [] : [
        `What wind does cannot be told from ${nights.length} nights whose winds differ by ` +
        `${
          showSi(range, "windSpeed")
        }: the study's value stays, and the calm part holds some of it.`,
      ],
      "Where the cracks are cannot be told, nor what opened vents or doors add.",
    ],
  };
}
