/** The fan chapter: which fan, at what point, at what power? @module */
import { chapter, withoutNotices } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { HeadersResult } from "../headers/mod.ts";
import { designAir, type TubesInputs, type TubesResult } from "../tubes/mod.ts";
import { fanChapter } from "./compute.ts";
import { completeFan } from "./defaults.ts";
import { fanFields } from "./fields.ts";
import { fanFigures } from "./figures.ts";
import type { FanInputs } from "./types.ts";

interface FanStudy {
  readonly fan: FanInputs;
  readonly tubes: TubesInputs;
  readonly climate: ClimateYear;
}

interface FanEarlier {
  readonly tubes: TubesResult;
  readonly headers: HeadersResult;
}

/** What the chosen fans give against this tube field, and what that takes. */
export const fan = chapter({
  name: "fan",
  section: { fields: fanFields, complete: completeFan },
  after: ["tubes", "headers"],
  takes: (study: FanStudy, { tubes, headers }: FanEarlier) => ({
    inputs: study.fan,
    surroundings: {
      tubes: withoutNotices(tubes),
      tubesInputs: study.tubes,
      headers: withoutNotices(headers),
      ...designAir(study),
    },
  }),
  compute: ({ inputs, surroundings }) => fanChapter(inputs, surroundings),
  figures: fanFigures,
  extras: {},
});
