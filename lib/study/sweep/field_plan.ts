/** A sweep of other tube fields: those the quick search leaves, for the settled year to judge. @module */
import { formatQuantity } from "../../units/mod.ts";
import type { FieldCandidate } from "../../tubes/mod.ts";
import type { Study } from "../types.ts";

/** A field to be tried. */
type Field = Pick<
  FieldCandidate,
  "tube" | "count" | "length" | "spacing" | "layers" | "depth"
>;

/**
 * A number of fields out of the front of the quick search, evenly by their place in it, which is that
 * of their cost: the cheapest and the dearest among them.
 *
 * @param front by rising cost
 * @param count of fields wanted
 */
export function spreadOver<F>(front: readonly F[], count: number): readonly F[] {
  if (front.length <= count) return front;
  if (count === 1) return [front[0]!];
  return Array.from(
    { length: count },
    (_, place) => front[Math.round(place * (front.length - 1) / (count - 1))]!,
  );
}

/**
 * Text of a sweep file whose first row is the study's own field and the others are fields of the quick
 * search. Fan, control and design flow stay those of the study; each layer has headers of its own
 * where the study's layers do.
 *
 * @param study checked study
 * @param fields to be tried, besides its own
 */
export function fieldSweepText(study: Study, fields: readonly FieldCandidate[]): string {
  const { tubes, headers } = study;
  const each = headers.groups === tubes.layers;
  const all: readonly Field[] = [tubes, ...fields];
  const length = (value: number) => formatQuantity(value, "length", "SI", 6);
  const row = (key: string, values: readonly (string | number)[]) =>
    `  ${key}: [${values.join(", ")}]`;
  const groups = (field: Field) =>
    field === tubes ? headers.groups : each ? field.layers : Math.min(headers.groups, field.count);
  return `# Tube fields of ${study.heading.name}: its own first, then ${fields.length} that the quick search
# leaves, by rising cost. The settled year judges each. Change them, add to them, and run the sweep
# again into another folder.
form: zip
chapters: [tubes, headers, fan, store, worth]
keys:
${
    [
      row("tubes.tube", all.map(({ tube }) => tube)),
      row("tubes.count", all.map(({ count }) => count)),
      row("tubes.length", all.map((field) => length(field.length))),
      row("tubes.spacing", all.map((field) => length(field.spacing))),
      row("tubes.layers", all.map(({ layers }) => layers)),
      row("tubes.depth", all.map((field) => length(field.depth))),
      row("headers.groups", all.map(groups)),
    ].join("\n")
  }
`;
}
