/** Stage: leakage by a fan that holds a pressure in the house. @module */
import { HOUR, InputError } from "../../basics/mod.ts";
import { propagate } from "../uncertainty/propagate.ts";
import { estimateOf, type Stage } from "./estimate.ts";
import { fitLinear } from "./linear_fit.ts";
import { showNumber } from "../../units/mod.ts";

/** Pa at which the result is stated */
const AT_PRESSURE = 50;
/** air changes at 50 Pa over those in ordinary wind (common practice, no source) */
const ORDINARY_WEATHER = 20;

/** Readings of a pressure test. */
export interface PressureTest {
  /** Pa between house and outside, each reading, of one sign */
  readonly pressure: readonly number[];
  /** m³/s through the fan */
  readonly airFlow: readonly number[];
  /** m³ of the house */
  readonly volume: number;
}

/**
 * Air changes at 50 Pa from Q = C·Δp^n, fitted straight in the logarithms (ISO 9972 [iso-9972-2015],
 * from memory).
 *
 * @param test at least 4 pressures
 * @returns stage with air changes at 50 Pa in 1/h, the exponent, and a rough guess of those in ordinary
 * weather (a twentieth, common practice, no source), which is no value for the study
 * @throws InputError for too few readings or any that is not above 0
 */
export function pressureTest({ pressure, airFlow, volume }: PressureTest): Stage {
  const odd = pressure.findIndex((one, i) => !(Math.abs(one) > 0 && airFlow[i]! > 0));
  if (pressure.length < 4 || pressure.length !== airFlow.length || odd >= 0 || !(volume > 0)) {
    throw new InputError(
      `pressure test: ${pressure.length} pressures and ${airFlow.length} flows` +
        (odd >= 0 ? `, reading ${odd + 1} is not above 0` : "") +
        "; expected 4 or more of each, above 0, and a volume",
    );
  }
  const logs = pressure.map((one) => Math.log(Math.abs(one) / AT_PRESSURE));
  const fit = fitLinear([logs.map(() => 1), logs], airFlow.map(Math.log), logs.map((_, i) => i));
  const covariance = fit.correlation.map((row, a) =>
    row.map((r, b) => r * fit.standardDeviations[a]! * fit.standardDeviations[b]!)
  );
  const found = propagate(
    { values: fit.parameters, covariance },
    ([flow, exponent]) => [Math.exp(flow!) * HOUR / volume, exponent!],
  );
  const student = fit.halfWidths[0]! / fit.standardDeviations[0]!;
  const what = [
    { name: "air changes at 50 Pa", key: null, unit: "1/h" },
    { name: "flow exponent", key: null, unit: "" },
  ];
  const estimates = what.map((one, j) =>
    estimateOf(one, found.values[j]!, found.uncertainties[j]!, student * found.uncertainties[j]!)
  );
  const rough = found.values[0]! / ORDINARY_WEATHER;
  return {
    name: "pressure test",
    estimates,
    correlation: found.correlation,
    used: `${pressure.length} pressures from ${
      showNumber(Math.min(...pressure.map(Math.abs)), 0)
    } to ${showNumber(Math.max(...pressure.map(Math.abs)), 0)} Pa`,
    count: pressure.length,
    places: [],
    cannotTell: [
      "How much of it the weather drives cannot be told: a twentieth, here " +
      `${
        showNumber(rough, 2)
      } 1/h, is common practice and may be off by a factor of two. A tracer decay ` +
      "tells the real one.",
    ],
  };
}
