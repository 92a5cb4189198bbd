/** Defaults of the tubes section that follow from the house. @module */
import { HOUR, type NoteDefault, roundTo } from "../basics/mod.ts";
import type { HouseInputs } from "../house/types.ts";
import { allowance } from "./allowances.ts";
import type { TubesGiven, TubesInputs } from "./fields.ts";
import { findTube } from "./products.ts";

/** Air changes an hour the tube field moves where no air flow is given. Growers' practice, no source. */
const AIR_CHANGES = 5;
/** m/s in the tube where no count is given. Common practice, no source. */
const TUBE_SPEED = 2.5;
/**
 * m from the headers' centres to the ends of the house: the footing, the pit beyond the headers, and
 * half of a header that goes between two layers. Common practice, no source.
 */
const END_CLEARANCE = allowance("footing width") + allowance("header space") + 0.3;
/** Share of the house that tubes of a very short one take up. Common practice, no source. */
const LEAST_SHARE = 1 / 3;
/** m between tubes, where the layer then fits under the house. Common practice, no source. */
const TUBE_SPACING = 0.4;
/** Layers of more than one tube, unless they would be wider than the house. Common practice, no source. */
const LAYERS = 2;
/** Most layers that are chosen where none are given. Common practice, no source. */
const MOST_LAYERS = 4;

/** Fills what the section leaves open from the size of the house. */
export function completeTubes(
  given: TubesGiven,
  { house }: { readonly house: HouseInputs },
  note: NoteDefault,
): TubesInputs {
  const volume = house.length * house.width * (house.eaveHeight + house.ridgeHeight) / 2;
  const airFlow = note(
    "tubes.airFlow",
    given.airFlow,
    () => roundTo(volume * AIR_CHANGES / HOUR, 0.001),
  );
  const { insideDiameter, outsideDiameter } = findTube(given.tube);
  const area = Math.PI / 4 * insideDiameter ** 2;
  const [lengthwise, across] = given.direction === "along"
    ? [house.length, house.width]
    : [house.width, house.length];
  const count = note(
    "tubes.count",
    given.count,
    () => Math.ceil(airFlow / (area * TUBE_SPEED)),
  );
  const room = across - 2 * sideClearance(outsideDiameter);
  const layers = note("tubes.layers", given.layers, () => {
    const inLayer = Math.max(
      1,
      Math.floor(room / (given.spacing ?? leastSpacing(outsideDiameter))) + 1,
    );
    return Math.min(count, Math.max(LAYERS, Math.min(MOST_LAYERS, Math.ceil(count / inLayer))));
  });
  const gaps = Math.max(1, Math.ceil(count / layers) - 1);
  return {
    ...given,
    airFlow,
    count,
    layers,
    spacing: note("tubes.spacing", given.spacing, () => {
      const fitting = Math.floor(100 * room / gaps) / 100;
      return Math.max(Math.min(TUBE_SPACING, fitting), leastSpacing(outsideDiameter));
    }),
    length: note(
      "tubes.length",
      given.length,
      () => roundTo(Math.max(lengthwise - 2 * END_CLEARANCE, lengthwise * LEAST_SHARE), 0.01),
    ),
  };
}

/** m from the outer tubes to the side of the house, so that the pit keeps off the footing. */
function sideClearance(outsideDiameter: number): number {
  return outsideDiameter / 2 + allowance("working margin") + allowance("footing width");
}

/** Least spacing at which the header keeps enough wall between the holes of neighbouring tubes, m. */
function leastSpacing(outsideDiameter: number): number {
  const hole = outsideDiameter + allowance("hole clearance");
  const least = Math.max(1.5 * outsideDiameter, hole / (1 - allowance("least ligament")));
  return Math.ceil(100 * least - 1e-9) / 100;
}
