/** Quantities of insulation boards, from the geometry. @module */
import { fieldGeometry } from "../../headers/mod.ts";
import { showBoth } from "../../units/mod.ts";
import type { MaterialQuantity, TakeOffInputs } from "./types.ts";
import { withWaste } from "./waste.ts";

/** Board at the edge of the floor: it belongs to the house, with or without a store. */
export function edgeBoardRows(inputs: TakeOffInputs): MaterialQuantity[] {
  const { house } = inputs;
  if (house.edgeInsulation <= 0 || house.edgeInsulationDepth <= 0) return [];
  const board = 2 * (house.length + house.width) * house.edgeInsulationDepth;
  return [{
    id: "edge-board",
    part: "house",
    item: `edge insulation, ${showBoth(house.edgeInsulation, "resistance")}`,
    amount: board,
    unit: "m²",
    order: withWaste(board, "insulation waste"),
    basis: `${showBoth(2 * (house.length + house.width), "length")} around the house × ${
      showBoth(house.edgeInsulationDepth, "depth")
    }`,
  }];
}

/** Flat board below the tubes. */
export function flatBoardRows(inputs: TakeOffInputs): MaterialQuantity[] {
  if (inputs.flatBoard === null) return [];
  const { pit } = fieldGeometry(inputs);
  const area = pit.length * pit.width;
  return [{
    id: "flat-board",
    part: "pit",
    item: `flat board, ${showBoth(inputs.flatBoard, "resistance")}`,
    amount: area,
    unit: "m²",
    order: withWaste(area, "insulation waste"),
    basis: "length × width of the pit",
  }];
}
