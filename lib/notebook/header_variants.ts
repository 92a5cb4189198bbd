/** Headers of other sizes and layouts, and with careless tube ends. @module */
import {
  headerGroups,
  type HeaderLayout,
  headersOfSize,
  scatterWorkmanship,
  type SizedHeaders,
  type WorkmanshipResult,
} from "../headers/mod.ts";
import { DESIGN_AIR_TEMPERATURE, meanPressure, type Study } from "../study/mod.ts";
import type { TubesResult } from "../tubes/mod.ts";

/** Inside diameters people find: 8 to 24 inches, m. */
const SIZES = [8, 10, 12, 15, 18, 24].map((inches) => inches * 0.0254);
/** Ends between flush and 25 mm in, half of the holes with a burr; common practice, no source. */
const CARELESS = { insertionMin: 0, insertionMax: 0.025, burrShare: 0.5, burrLoss: 0.5 };
const TRIALS = 100;

/** One size in one layout. */
export interface HeaderVariant extends SizedHeaders {
  /** how it is fed */
  readonly layout: HeaderLayout;
}

function firstGroup(study: Study, tubes: TubesResult, layout = study.headers.layout) {
  const state = { pressure: meanPressure(study), airTemperature: DESIGN_AIR_TEMPERATURE };
  const { group, members } = headerGroups({ ...study.headers, layout }, tubes, state)[0]!;
  return { group, airFlow: tubes.flowPerTube * members.length };
}

/** Headers of common sizes in three layouts, for the first group of tubes. */
export function headerVariants(study: Study, tubes: TubesResult): HeaderVariant[] {
  return (["Z", "U", "centre"] as const).flatMap((layout) => {
    const { group, airFlow } = firstGroup(study, tubes, layout);
    const least = 1.05 * tubes.product.outsideDiameter;
    return SIZES.filter((size) => size >= least)
      .map((size) => ({ layout, ...headersOfSize(group, airFlow, size) }));
  });
}

/** A hundred fields with carelessly set tube ends; the same ones every time. */
export function carelessEnds(study: Study, tubes: TubesResult): WorkmanshipResult {
  const { group, airFlow } = firstGroup(study, tubes);
  return scatterWorkmanship(group, airFlow, { workmanship: CARELESS, trials: TRIALS, seed: 1 });
}
