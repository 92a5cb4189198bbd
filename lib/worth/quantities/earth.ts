/** Quantities of the pit, from the geometry. @module */
import { sum } from "d3-array";
import { fieldGeometry, headerLength } from "../../headers/mod.ts";
import { showBoth } from "../../units/mod.ts";
import { allowance, pitVolume } from "../../tubes/mod.ts";
import type { MaterialQuantity, TakeOffInputs } from "./types.ts";
import { withWaste } from "./waste.ts";

const PART = "pit";

/** Digging, bedding, backfill and what goes into the pit with the tubes. */
export function earthRows(inputs: TakeOffInputs): MaterialQuantity[] {
  const { pit, radius, headers: pairs } = fieldGeometry(inputs);
  const { tubes, headersInputs } = inputs;
  const headers = sum(pairs, headerLength) * Math.PI / 4 *
    (headersInputs.diameter ** 2 + headersInputs.returnDiameter ** 2);
  const bank = pitVolume(pit);
  const bedding = pit.length * pit.width * allowance("bedding");
  const displaced = tubes.totalLength * Math.PI * radius ** 2 + headers;
  return [
    {
      id: "excavation",
      part: PART,
      item: "excavation",
      amount: bank,
      unit: "m³ bank",
      order: bank * allowance("swell"),
      basis: `${showBoth(pit.length, "depth")} × ${showBoth(pit.width, "depth")} × ${
        showBoth(pit.depth, "depth")
      }, mean depth, ${
        pit.batter === 0
          ? "with vertical sides; sloped or shored sides need more"
          : `at the bottom, with a batter of ${pit.batter}`
      }; "to order" is the loose volume`,
    },
    {
      id: "bedding",
      part: PART,
      item: "bedding",
      amount: bedding,
      unit: "m³",
      order: bedding,
      basis: `${showBoth(allowance("bedding"), "smallLength")} below the lowest tubes`,
    },
    {
      id: "backfill",
      part: PART,
      item: "backfill in lifts",
      amount: bank - bedding - displaced,
      unit: "m³",
      order: (bank - bedding - displaced) * allowance("swell"),
      basis: "pit less bedding, tubes and headers",
    },
    {
      id: "machine-day",
      part: PART,
      item: "digger with driver",
      amount: bank / allowance("bank volume dug in a day"),
      unit: "days",
      order: Math.ceil(2 * bank / allowance("bank volume dug in a day")) / 2,
      basis:
        `${showBoth(bank, "volume")} dug at ${
          showBoth(allowance("bank volume dug in a day"), "volume")
        } a day; ` +
        "half days; the backfill is counted with it",
    },
    ...separationRows(inputs),
    ...gravelRows(inputs),
  ];
}

/** Filter fabric over the bedding, where tubes that are not perforated need none. */
function separationRows(inputs: TakeOffInputs): MaterialQuantity[] {
  if (!inputs.tubes.product.perforated) return [];
  const { pit } = fieldGeometry(inputs);
  const area = pit.length * pit.width;
  return [{
    id: "filter-fabric",
    part: PART,
    item: "filter fabric over the tubes",
    amount: area,
    unit: "m²",
    order: withWaste(area, "fabric overlap"),
    basis: "length × width of the pit; keeps fines out of perforated tube",
  }];
}

function gravelRows(inputs: TakeOffInputs): MaterialQuantity[] {
  const { gravelMargin, tubes } = inputs;
  if (gravelMargin === null) return [];
  const { width, layers, length, radius } = fieldGeometry(inputs);
  const height = layers.at(-1)! - layers[0]! + 2 * gravelMargin;
  const volume = (width + 2 * gravelMargin) * height * length -
    tubes.totalLength * Math.PI * radius ** 2;
  return [{
    id: "gravel",
    part: PART,
    item: "washed gravel round the tubes",
    amount: volume,
    unit: "m³",
    order: volume * allowance("gravel settling"),
    basis: "bed less the tubes in it; takes the place of as much backfill",
  }];
}
