/** Defaults of the headers section that follow from the tubes. @module */
import { type NoteDefault, roundTo } from "../basics/mod.ts";
import { findTube, type TubesInputs } from "../tubes/mod.ts";
import type { HeadersGiven, HeadersInputs } from "./fields.ts";

/** Fills the diameters left open: a cross-section as large as that of the tubes of a group. */
export function completeHeaders(
  given: HeadersGiven,
  { tubes }: { readonly tubes: TubesInputs },
  note: NoteDefault,
): HeadersInputs {
  const perGroup = tubes.count / given.groups;
  const { insideDiameter, outsideDiameter } = findTube(tubes.tube);
  const diameter = note(
    "headers.diameter",
    given.diameter,
    () => roundTo(Math.max(insideDiameter * Math.sqrt(perGroup), 1.5 * outsideDiameter), 0.01),
  );
  return {
    ...given,
    diameter,
    returnDiameter: note("headers.returnDiameter", given.returnDiameter, () => diameter),
  };
}
