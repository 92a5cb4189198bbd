/** The headers chapter: does every tube get its share of the air? @module */
import { chapter, withoutNotices } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import { designAir, type TubesResult } from "../tubes/mod.ts";
import { headersChapter } from "./compute.ts";
import { completeHeaders } from "./defaults.ts";
import { headersFields } from "./fields.ts";
import { headersFigures } from "./figures.ts";
import type { HeadersInputs } from "./types.ts";

interface HeadersStudy {
  readonly headers: HeadersInputs;
  readonly climate: ClimateYear;
}

/** Shares of the tubes and pressure of headers and tubes at the design air flow. */
export const headers = chapter({
  name: "headers",
  section: { fields: headersFields, complete: completeHeaders },
  after: ["tubes"],
  takes: (study: HeadersStudy, { tubes }: { readonly tubes: TubesResult }) => ({
    inputs: study.headers,
    tubes: withoutNotices(tubes),
    state: designAir(study),
  }),
  compute: ({ inputs, tubes, state }) => headersChapter(inputs, tubes, state),
  figures: headersFigures,
  extras: {},
});
