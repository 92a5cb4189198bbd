/** What a search for tube fields found, in a few lines. @module */
import type { SearchAround } from "./search_around.ts";
import type { FieldCandidate } from "./search.ts";

/** A field worth a look, and why. */
export interface FieldPick {
  /** what it is best at, or "this study" */
  readonly why: string;
  /** the field */
  readonly field: FieldCandidate;
}

/**
 * A few fields of the front: cheapest, most heat, most heat for its cost and for the electricity,
 * and the study's own last.
 *
 * @param search outcome of the search; an empty front gives the study's own alone
 */
export function fieldPicks({ front, own }: Pick<SearchAround, "front" | "own">): FieldPick[] {
  const best = (value: (field: FieldCandidate) => number) =>
    front.reduce((most, field) => value(field) > value(most) ? field : most, front[0]!);
  const picks = front.length === 0 ? [] : [
    { why: "cheapest", field: best((field) => -field.cost) },
    { why: "most heat", field: best((field) => field.heat) },
    { why: "most heat for its cost", field: best((field) => field.heat / field.cost) },
    {
      why: "most heat for its electricity",
      field: best((field) => field.heat / Math.max(1e-9, field.fanEnergy)),
    },
  ];
  return own === null ? picks : [...picks, { why: "this study", field: own }];
}

/**
 * Costs that part fields into three classes of equal number, cheap to dear.
 *
 * @param fields at least one
 * @returns the two limits, money; a field at a limit belongs to the dearer class
 */
export function costClasses(
  fields: readonly Pick<FieldCandidate, "cost">[],
): readonly [number, number] {
  const sorted = fields.map((field) => field.cost).sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return [at(1 / 3), at(2 / 3)];
}
