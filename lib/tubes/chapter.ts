/** The tubes chapter: how many, how long, what pressure, what heat? @module */
import { chapter } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { HouseResult } from "../house/types.ts";
import { tubesChapter } from "./compute.ts";
import { completeTubes } from "./defaults.ts";
import { designAir } from "./design_air.ts";
import { tubesFields } from "./fields.ts";
import { tubesFigures } from "./figures.ts";
import type { TubesInputs } from "./types.ts";

interface TubesStudy {
  readonly tubes: TubesInputs;
  readonly climate: ClimateYear;
}

/** Pressure, speed and dry heat transfer of one tube at the design air flow. */
export const tubes = chapter({
  name: "tubes",
  section: { fields: tubesFields, complete: completeTubes },
  after: ["house"],
  takes: (study: TubesStudy, { house }: { readonly house: Pick<HouseResult, "geometry"> }) => ({
    inputs: study.tubes,
    surroundings: {
      house: { floorArea: house.geometry.floorArea, perimeter: house.geometry.perimeter },
      ...designAir(study),
    },
  }),
  compute: ({ inputs, surroundings }) => tubesChapter(inputs, surroundings),
  figures: tubesFigures,
  extras: {},
});
