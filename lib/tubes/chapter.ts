/** The tubes chapter: how many, how long, what pressure, what heat? @module */
import { chapter, extra, withoutNotices } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { SoilResult } from "../soil/types.ts";
import { tubesChapter } from "./compute.ts";
import { completeTubes } from "./defaults.ts";
import { designAir } from "./design_air.ts";
import { tubesFields } from "./fields.ts";
import { tubesFigures } from "./figures.ts";
import { summariseTubes } from "./summary.ts";
import type { TubesInputs, TubesResult } from "./types.ts";
import { tubesVariants } from "./variants.ts";
import { tubesTables, tubesVariantsTables } from "./result_tables.ts";

interface TubesStudy {
  readonly house: Pick<HouseInputs, "length" | "width">;
  readonly tubes: TubesInputs;
  readonly climate: ClimateYear;
}

interface VariantsEarlier {
  readonly soil: SoilResult;
  readonly tubes: TubesResult;
}

function takes(study: TubesStudy) {
  return {
    inputs: study.tubes,
    surroundings: {
      house: { length: study.house.length, width: study.house.width },
      ...designAir(study),
    },
  };
}

/** Pressure, speed and dry heat transfer of one tube at the design air flow. */
export const tubes = chapter({
  name: "tubes",
  section: { fields: tubesFields, complete: completeTubes },
  after: [],
  takes,
  compute: ({ inputs, surroundings }) => summariseTubes(tubesChapter(inputs, surroundings)),
  figures: tubesFigures,
  tables: tubesTables,
  extras: {
    /** Other tubes, flows, numbers and lengths; silt and water. */
    tubesVariants: extra({
      after: ["soil", "tubes"],
      takes: (study: TubesStudy, { soil, tubes }: VariantsEarlier) => {
        const { inputs, surroundings } = takes(study);
        const { conductivity, heatCapacity } = soil.properties;
        return {
          inputs,
          surroundings: { ...surroundings, soil: { conductivity, heatCapacity } },
          tubes: withoutNotices(tubes),
        };
      },
      compute: ({ inputs, surroundings, tubes }) => tubesVariants(inputs, surroundings, tubes),
      tables: tubesVariantsTables,
    }),
  },
});
