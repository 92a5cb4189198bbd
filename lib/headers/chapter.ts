/** The headers chapter: does every tube get its share of the air? @module */
import { chapter, extra, withoutNotices } from "../basics/mod.ts";
import type { ClimateYear } from "../climate/types.ts";
import type { HouseInputs } from "../house/types.ts";
import { designAir, type TubesInputs, type TubesResult } from "../tubes/mod.ts";
import { headersChapter } from "./compute.ts";
import { completeHeaders } from "./defaults.ts";
import { headersFields } from "./fields.ts";
import { headersFigures } from "./figures.ts";
import { buildNotices } from "./buildable.ts";
import { fieldPit } from "./in_ground.ts";
import { pitNotices } from "./pit_notices.ts";
import { summariseHeaders } from "./summary.ts";
import type { HeadersInputs } from "./types.ts";
import { headersVariants } from "./variants.ts";
import { headersTables, headersVariantsTables } from "./result_tables.ts";

interface HeadersStudy {
  readonly headers: HeadersInputs;
  readonly tubes: Pick<TubesInputs, "slope" | "direction">;
  readonly house: Pick<HouseInputs, "length" | "width" | "footingDepth">;
  readonly climate: ClimateYear;
}

function question(study: HeadersStudy, { tubes }: { readonly tubes: TubesResult }) {
  return { inputs: study.headers, tubes: withoutNotices(tubes), state: designAir(study) };
}

/** Shares of the tubes and pressure of headers and tubes at the design air flow; the pit they need. */
export const headers = chapter({
  name: "headers",
  section: { fields: headersFields, complete: completeHeaders },
  after: ["tubes"],
  takes: (study: HeadersStudy, earlier: { readonly tubes: TubesResult }) => ({
    ...question(study, earlier),
    ground: {
      slope: study.tubes.slope,
      direction: study.tubes.direction,
      house: {
        length: study.house.length,
        width: study.house.width,
        footingDepth: study.house.footingDepth,
      },
    },
  }),
  compute: ({ inputs, tubes, state, ground }) => {
    const result = headersChapter(inputs, tubes, state);
    const field = { tubes, slope: ground.slope, headers: inputs };
    const notices = [
      ...result.notices,
      ...buildNotices(field),
      ...pitNotices(fieldPit(field), ground.house, ground.direction),
    ];
    return summariseHeaders({ ...result, notices }, tubes);
  },
  figures: headersFigures,
  tables: headersTables,
  extras: {
    /** Other sizes and layouts, careless ends, flooded tubes, plates. */
    headersVariants: extra({
      after: ["tubes"],
      takes: question,
      compute: headersVariants,
      tables: headersVariantsTables,
    }),
  },
});
