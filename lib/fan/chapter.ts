/** The fan chapter: which fan, at what point, at what power? @module */
import { chapter, extra } from "../basics/mod.ts";
import type { HeadersInputs } from "../headers/mod.ts";
import type { HouseInputs } from "../house/types.ts";
import { designAir, type TubesInputs } from "../tubes/mod.ts";
import { fanChapter } from "./compute.ts";
import { completeFan } from "./defaults.ts";
import { fanFields } from "./fields.ts";
import { fanFigures } from "./figures.ts";
import { summariseFan } from "./summary.ts";
import { type FanEarlier, type FanStudy, fanTaken } from "./takes.ts";
import { fanVariants } from "./variants.ts";
import { fanTables, fanVariantsTables } from "./result_tables.ts";

interface VariantsStudy extends FanStudy {
  readonly house: Pick<HouseInputs, "length" | "width">;
  readonly tubes: TubesInputs;
  readonly headers: HeadersInputs;
}

/** What the chosen fans give against this tube field, and what that takes. */
export const fan = chapter({
  name: "fan",
  section: { fields: fanFields, complete: completeFan },
  after: ["headers"],
  takes: fanTaken,
  compute: ({ inputs, surroundings }) => summariseFan(inputs, fanChapter(inputs, surroundings)),
  figures: fanFigures,
  tables: fanTables,
  extras: {
    /** Other fans, numbers, speeds and elevations. */
    fanVariants: extra({
      after: ["headers"],
      takes: (study: VariantsStudy, earlier: FanEarlier) => ({
        ...fanTaken(study, earlier),
        field: {
          house: { length: study.house.length, width: study.house.width },
          tubesInputs: study.tubes,
          headersInputs: study.headers,
          airTemperature: designAir(study).airTemperature,
        },
      }),
      compute: ({ inputs, surroundings, field }) => fanVariants(inputs, surroundings, field),
      tables: fanVariantsTables,
    }),
  },
});
