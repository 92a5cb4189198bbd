/** The tubes chapter: how many, how long, what pressure, what heat? @module */
import { chapter, extra, withoutNotices } from "../basics/mod.ts";
import type { SoilResult } from "../soil/types.ts";
import { tubesChapter } from "./compute.ts";
import { completeTubes } from "./defaults.ts";
import { tubesFields } from "./fields.ts";
import { tubesFigures } from "./figures.ts";
import { summariseTubes } from "./summary.ts";
import { type TubesStudy, tubesTaken } from "./takes.ts";
import type { TubesResult } from "./types.ts";
import { tubesVariants } from "./variants.ts";
import { tubesTables, tubesVariantsTables } from "./result_tables.ts";

interface VariantsEarlier {
  readonly soil: SoilResult;
  readonly tubes: TubesResult;
}

/** Pressure, speed and dry heat transfer of one tube at the design air flow. */
export const tubes = chapter({
  name: "tubes",
  section: { fields: tubesFields, complete: completeTubes },
  after: [],
  takes: tubesTaken,
  compute: ({ inputs, surroundings }) => summariseTubes(tubesChapter(inputs, surroundings)),
  figures: tubesFigures,
  tables: tubesTables,
  extras: {
    /** Other tubes, flows, numbers and lengths; silt and water. */
    tubesVariants: extra({
      after: ["soil", "tubes"],
      takes: (study: TubesStudy, { soil, tubes }: VariantsEarlier) => {
        const { inputs, surroundings } = tubesTaken(study);
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
