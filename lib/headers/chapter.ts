/** The headers chapter: does every tube get its share of the air? @module */
import { chapter, extra } from "../basics/mod.ts";
import { completeHeaders } from "./defaults.ts";
import { headersFields } from "./fields.ts";
import { headersFigures } from "./figures.ts";
import { headersInPit } from "./in_pit.ts";
import { summariseHeaders } from "./summary.ts";
import { headersAsked, headersTaken } from "./takes.ts";
import { headersVariants } from "./variants.ts";
import { headersTables, headersVariantsTables } from "./result_tables.ts";

/** Shares of the tubes and pressure of headers and tubes at the design air flow; the pit they need. */
export const headers = chapter({
  name: "headers",
  section: { fields: headersFields, complete: completeHeaders },
  after: ["tubes"],
  takes: headersTaken,
  compute: (taken) => summariseHeaders(headersInPit(taken), taken.tubes),
  figures: headersFigures,
  tables: headersTables,
  extras: {
    /** Other sizes and layouts, careless ends, flooded tubes, plates. */
    headersVariants: extra({
      after: ["tubes"],
      takes: headersAsked,
      compute: headersVariants,
      tables: headersVariantsTables,
    }),
  },
});
