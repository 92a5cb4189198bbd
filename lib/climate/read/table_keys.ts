/** Keys that say how a table of any layout is split, in a columns file and in a log map. @module */
import { z } from "zod";

/** number or head of a column */
export const columnName = z.union([z.number().int().min(1), z.string().min(1)]);

/** true or yes, false or no */
export const yesNo = z.union([z.boolean(), z.enum(["yes", "no"])])
  .transform((value) => value === true || value === "yes");

const delimiters = { comma: ",", semicolon: ";", tab: "\t", space: " ", bar: "|" } as const;

/** Lines to skip, delimiter, decimal sign, heads, marks of missing values; each with its default. */
export const tableKeys = {
  skipLines: z.number().int().min(0).default(0),
  delimiter: z.string().min(1).default(",")
    .transform((text) => delimiters[text as keyof typeof delimiters] ?? text)
    .refine(
      (text) => text.length === 1,
      "must be one character, or comma, semicolon, tab, space or bar",
    ),
  decimal: z.enum([".", ",", "point", "comma"]).default("."),
  header: yesNo.default(true),
  missing: z.array(z.union([z.string(), z.number()]).transform(String)).default([]),
};
