/** The computations of a run with the first two rows of each comparison, which settle a year or two each. */
import type { AnyComputation } from "winterground/basics/mod.ts";
import { houseMeasures } from "winterground/house/mod.ts";
import { assumedYears, usualAssumptions } from "winterground/house/assumptions.ts";
import { rankMeasures } from "winterground/store/ranking.ts";
import { STORE_VARIANTS, storeVariants } from "winterground/store/variants/variants.ts";
import { COMPUTATIONS } from "winterground/study/chapters.ts";

type Question<F extends (...args: never[]) => unknown, K extends number> = Parameters<F>[K];

/** Comparisons of stores, houses and measures, cut short; everything else as it is. */
export function fewComparisons(): ReadonlyMap<string, AnyComputation> {
  const short = {
    variants: (taken: {
      readonly request: Question<typeof storeVariants, 0>;
      readonly plan: Question<typeof storeVariants, 1>;
    }) => storeVariants(taken.request, taken.plan, STORE_VARIANTS.slice(0, 2)),
    ranking: (taken: {
      readonly request: Question<typeof rankMeasures, 0>;
      readonly known: Question<typeof rankMeasures, 1>;
    }) => {
      const { request, known } = taken;
      return rankMeasures(request, known, houseMeasures(request.houseInputs).slice(0, 2));
    },
    assumptions: (taken: {
      readonly inputs: Question<typeof assumedYears, 0>;
      readonly climate: Question<typeof assumedYears, 1>;
      readonly soil: Question<typeof assumedYears, 2>;
      readonly planned: Question<typeof assumedYears, 3>;
    }) => {
      const { inputs, climate, soil, planned } = taken;
      return assumedYears(inputs, climate, soil, planned, usualAssumptions(inputs).slice(0, 2));
    },
  };
  return new Map([
    ...COMPUTATIONS,
    ...Object.entries(short).map(([name, compute]) => {
      const { steps: _, ...whole } = COMPUTATIONS.get(name)!;
      return [name, { ...whole, compute } as AnyComputation] as const;
    }),
  ]);
}
