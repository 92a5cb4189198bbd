/** One input changed, the chapter run again. @module */
import type { HouseResult } from "../../house/mod.ts";
import type { Study } from "../../study/mod.ts";
import { tubes, type TubesResult } from "../../tubes/mod.ts";

function tubesOf(study: Study, house: HouseResult): TubesResult {
  return tubes.compute(tubes.takes(study, { house }));
}

/**
 * The tubes chapter at multiples of the study's air flow.
 *
 * @param study the study
 * @param house result of the house chapter
 * @param factors ratios to the study's air flow
 */
export function tubesAtFlows(
  study: Study,
  house: HouseResult,
  factors: readonly number[],
): TubesResult[] {
  return factors.map((factor) =>
    tubesOf({ ...study, tubes: { ...study.tubes, airFlow: study.tubes.airFlow * factor } }, house)
  );
}

/** The tubes chapter at multiples of the study's number of tubes, same air flow. */
export function tubesAtCounts(
  study: Study,
  house: HouseResult,
  factors: readonly number[],
): TubesResult[] {
  const layers = study.tubes.layers;
  const counts = factors.map((factor) =>
    Math.max(layers, Math.round(study.tubes.count * factor / layers) * layers)
  );
  return [...new Set(counts)].map((count) =>
    tubesOf({ ...study, tubes: { ...study.tubes, count } }, house)
  );
}
