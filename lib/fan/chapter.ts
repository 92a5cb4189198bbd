/** The fan chapter: which fan, at what point, at what power? @module */
import { chapter } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { HeadersResult } from "../headers/mod.ts";
import { designAir, type TubesInputs } from "../tubes/mod.ts";
import { fanChapter } from "./compute.ts";
import { completeFan } from "./defaults.ts";
import { fanFields } from "./fields.ts";
import { fanFigures } from "./figures.ts";
import type { FanInputs } from "./types.ts";

interface FanStudy {
  readonly fan: FanInputs;
  readonly tubes: Pick<TubesInputs, "airFlow">;
  readonly climate: ClimateYear;
}

/** The remark says nothing of the fan itself. */
function withoutNote(inputs: FanInputs): FanInputs {
  return { ...inputs, note: "" };
}

/** What the chosen fans give against this tube field, and what that takes. */
export const fan = chapter({
  name: "fan",
  section: { fields: fanFields, complete: completeFan },
  after: ["headers"],
  takes: (study: FanStudy, { headers }: { readonly headers: HeadersResult }) => ({
    inputs: withoutNote(study.fan),
    surroundings: {
      tubesInputs: { airFlow: study.tubes.airFlow },
      headers: { systemCurve: headers.systemCurve },
      ...designAir(study),
    },
  }),
  compute: ({ inputs, surroundings }) => fanChapter(inputs, surroundings),
  figures: fanFigures,
  extras: {},
});
