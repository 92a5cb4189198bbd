/** Defaults of the headers section that follow from the tubes. @module */
import { type NoteDefault, roundTo } from "../basics/mod.ts";
import { findTube, tubePositions, type TubesInputs } from "../tubes/mod.ts";
import { buildDoubts, buildFaults } from "./buildable.ts";
import type { HeadersGiven, HeadersInputs } from "./fields.ts";
import { buryHeaders } from "./in_ground.ts";

/** Fills what is left open: pairs of headers that can be built, as large as the tubes of a group. */
export function completeHeaders(
  given: HeadersGiven,
  { tubes }: { readonly tubes: TubesInputs },
  note: NoteDefault,
): HeadersInputs {
  const groups = note("headers.groups", given.groups, () => chooseGroups(given, tubes));
  const sizes = completeSizes({ ...given, groups }, tubes);
  return {
    ...given,
    groups,
    diameter: note("headers.diameter", given.diameter, () => sizes.diameter),
    returnDiameter: note(
      "headers.returnDiameter",
      given.returnDiameter,
      () => sizes.returnDiameter,
    ),
  };
}

/** Most pairs of headers that are chosen where none are given. */
const MOST_GROUPS = 50;

type Sizes = Pick<HeadersInputs, "diameter" | "returnDiameter" | "groups">;

/** Diameters for a number of groups: a cross-section as large as that of the tubes of a group. */
function completeSizes(
  given: HeadersGiven & { readonly groups: number },
  tubes: TubesInputs,
): Sizes {
  const { insideDiameter, outsideDiameter } = findTube(tubes.tube);
  const side = Math.max(
    insideDiameter * Math.sqrt(tubes.count / given.groups),
    1.5 * outsideDiameter,
  );
  const diameter = given.diameter ?? roundTo(side, 0.01);
  return { groups: given.groups, diameter, returnDiameter: given.returnDiameter ?? diameter };
}

/** A pair for each layer, or the fewest side by side of which the headers can be built. */
function chooseGroups(given: HeadersGiven, tubes: TubesInputs): number {
  const positions = tubePositions(tubes);
  const product = findTube(tubes.tube);
  const most = Math.min(MOST_GROUPS, tubes.count);
  for (let beside = 1; beside * tubes.layers <= most; beside++) {
    const headers = completeSizes({ ...given, groups: beside * tubes.layers }, tubes);
    const field = {
      tubes: { positions, product, length: tubes.length },
      slope: tubes.slope,
      headers,
    };
    const bent = buryHeaders(field).some(({ rows }) => rows.some(({ bend }) => bend > 0));
    if (!bent && buildFaults(field).length === 0 && buildDoubts(field).length === 0) {
      return headers.groups;
    }
  }
  return tubes.layers;
}
