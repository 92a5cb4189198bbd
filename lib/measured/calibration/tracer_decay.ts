/** Stage: air change from the decay of a tracer gas. @module */
import { HOUR, InputError } from "../../basics/mod.ts";
import { fitLeastSquares } from "../fit/least_squares.ts";
import { certaintyWithTies, estimateOf, serialOf, type Stage, toldTogether } from "./estimate.ts";
import { showNumber } from "../../units/mod.ts";

/** A decay as logged: gaps are not numbers. */
export interface TracerDecay {
  /** s from any start, rising */
  readonly seconds: ArrayLike<number>;
  /** concentration inside, ppm or any one unit */
  readonly concentration: ArrayLike<number>;
  /** concentration outside, same unit; mean of the decay */
  readonly outside: number;
  /**
   * true where something in the house gives off the gas or takes it up, such as a crop that breathes:
   * the level at which it would come to rest is then fitted too
   */
  readonly source?: boolean;
  /** standard uncertainty of the outside concentration, same unit; 0 unless given */
  readonly outsideUncertainty?: number;
}

/** fewest readings that make a decay */
const FEWEST = 6;

/**
 * Air changes per hour from c(t) = c_rest + (c_0 − c_rest)·exp(−n t): the decay of a well mixed tracer
 * (ASTM E741 [astm-e741-2011], from memory). Without a source c_rest is the concentration outside, with one it
 * is fitted.
 *
 * @param decay log from the end of the dosing on
 * @returns stage with the air change in 1/h
 * @throws InputError where the readings are too few or do not fall towards the outside
 */
export function tracerDecay(decay: TracerDecay): Stage {
  const { outside, source = false, outsideUncertainty = 0 } = decay;
  const kept = Array.from(
    decay.concentration,
    (one, i) => [decay.seconds[i]! / HOUR, one, i] as const,
  )
    .filter(([hours, one]) => Number.isFinite(hours + one));
  if (kept.length < FEWEST) {
    throw new InputError(
      `tracer decay: ${kept.length} readings; expected ${FEWEST} or more: log every few minutes`,
    );
  }
  const [first, last] = [kept[0]!, kept.at(-1)!];
  const span = last[0] - first[0];
  // means of a quarter, so that a last reading that noise puts below outside is no fault
  const quarter = Math.ceil(kept.length / 4);
  const level = (list: typeof kept) => list.reduce((sum, [, one]) => sum + one, 0) / list.length;
  const [early, late] = [level(kept.slice(0, quarter)), level(kept.slice(-quarter))];
  const drop = (early - outside) / Math.max(late - outside, 0.01 * (early - outside));
  if (!source && !(early > outside && drop > 1)) {
    throw new InputError(
      `tracer decay: from ${first[1]} to ${
        last[1]
      } with ${outside} outside; expected a fall towards ` +
        "the outside: begin after the dosing ends, or say that there is a source",
    );
  }
  const hours = kept.map(([time]) => time - first[0]);
  const measured = kept.map(([, one]) => one);
  const misfit = (rest: number | undefined) => (p: readonly number[]) => {
    const level = rest ?? p[2]!;
    return hours.map((time, i) => level + p[1]! * Math.exp(-p[0]! * time) - measured[i]!);
  };
  const rate = Math.log(drop > 1 ? drop : Math.E) / (0.75 * span);
  const start = [rate, first[1] - outside, ...source ? [outside] : []];
  const fit = fitLeastSquares(misfit(source ? undefined : outside), start);
  const serial = serialOf(misfit(source ? undefined : outside)(fit.parameters));
  const sure = certaintyWithTies(fit, kept.length, start.length, serial);
  // what an outside level that is off by its uncertainty does to the rate
  const shifted = source || outsideUncertainty === 0
    ? 0
    : fitLeastSquares(misfit(outside + outsideUncertainty), start).parameters[0]! -
      fit.parameters[0]!;
  const found = estimateOf(
    { name: "air change", key: null, unit: "1/h" },
    fit.parameters[0]!,
    Math.hypot(sure.standardDeviations[0]!, shifted),
    Math.hypot(sure.halfWidths[0]!, 1.96 * shifted),
  );
  const names = ["air change", "first excess", "resting level"].slice(0, start.length);
  return {
    name: "tracer decay",
    estimates: [found],
    correlation: [[1]],
    used:
      `${kept.length} readings over ${showNumber(span, 1)} h, from ${showNumber(first[1], 0)} to ` +
      `${showNumber(last[1], 0)}, outside ${showNumber(outside, 0)}`,
    count: kept.length,
    places: kept.map(([, , place]) => place),
    cannotTell: [
      ...toldTogether(names, fit.correlation),
      "One decay tells the air change in its own wind and temperature difference only; the law behind " +
      "it takes several.",
      ...source
        ? [
          "What the source gives off is told only through the air change: resting level less outside, times the air flow.",
        ]
        : ["A crop that breathes, or people, would pass for a slower air change."],
    ],
  };
}
