/** The usual improvements of a house, as far as it does not have them. @module */
import { showBoth, showSi, showUs } from "../units/mod.ts";
import { usualCurtain } from "./skin/curtain.ts";
import { houseGeometry } from "./skin/geometry.ts";
import { findGlazing } from "./skin/glazing_table.ts";
import { DRUM_SURFACE } from "./barrels_and_masonry.ts";
import type { HouseInputs } from "./types.ts";
import { layerResistance, WALL_FILMS } from "./skin/walls.ts";

/** A changed house. */
export interface HouseMeasure {
  /** short name */
  readonly name: string;
  /** what was changed */
  readonly change: string;
  /** the house with it */
  readonly inputs: HouseInputs;
}

/** m² K/W of 50 mm closed-cell board. */
const BOARD = layerResistance({ material: "closed-cell-board", thickness: 0.05 });
/** m³ of water per m² of front glazing: 2.5 US gallons a square foot, extension rule for season extension. */
const WATER_PER_GLAZING = 0.1;

function insulated(transmittance: number | "glazed"): number {
  return transmittance === "glazed"
    ? 1 / (BOARD + WALL_FILMS.inside + WALL_FILMS.outside)
    : 1 / (1 / transmittance + BOARD);
}

/**
 * The usual improvements, each alone, as far as the house does not have them yet.
 *
 * @param inputs the house as it is
 * @returns changed houses; empty never
 */
export function houseMeasures(inputs: HouseInputs): readonly HouseMeasure[] {
  const list: HouseMeasure[] = [];
  const add = (name: string, change: string, changed: Partial<HouseInputs>) =>
    list.push({ name, change, inputs: { ...inputs, ...changed } });
  add("sealing", "leakage halved", {
    leakage: inputs.leakage / 2,
    leakageWind: inputs.leakageWind / 2,
  });
  const next = findGlazing(inputs.glazing).nextBetter;
  if (next !== null) {
    add("one more layer of glazing", `${inputs.glazing} to ${next}`, { glazing: next });
  }
  const knee = inputs.kneeWallHeight > 0;
  const height = knee ? inputs.kneeWallHeight : Math.min(0.9, inputs.eaveHeight);
  add(
    "knee-wall insulation",
    knee
      ? "50 mm closed-cell board"
      : `lowest ${showBoth(height, "length")} covered with 50 mm foam board`,
    { kneeWallHeight: height, kneeWall: knee ? insulated(inputs.kneeWall) : insulated("glazed") },
  );
  if (inputs.northWall === "glazed" || inputs.northWall > 0.35) {
    add("north wall insulation", "50 mm closed-cell board", {
      northWall: insulated(inputs.northWall),
    });
  }
  if (inputs.shape !== "lean-to" && (inputs.northRoof === "glazed" || inputs.northRoof > 0.35)) {
    add("north roof insulation", "50 mm closed-cell board", {
      northRoof: insulated(inputs.northRoof),
    });
  }
  if (inputs.edgeInsulation < BOARD || inputs.edgeInsulationDepth < 0.6) {
    add("perimeter foam", "50 mm closed-cell board, 0.6 m deep", {
      edgeInsulation: Math.max(BOARD, inputs.edgeInsulation),
      edgeInsulationDepth: Math.max(0.6, inputs.edgeInsulationDepth),
    });
  }
  if (inputs.curtain === null) {
    const curtain = usualCurtain(inputs.heatSetPoint);
    const { resistance, coverage, edgeLeak } = curtain;
    add(
      "night curtain",
      `${showBoth(resistance, "resistance")}, ${showSi(coverage, "share")} covered, ` +
        `edges leak ${showSi(edgeLeak, "share")}`,
      { curtain },
    );
  } else {
    add("curtain edges sealed", "edge leak cut to a third", {
      curtain: { ...inputs.curtain, edgeLeak: inputs.curtain.edgeLeak / 3 },
    });
  }
  const front = houseGeometry(inputs).parts
    .filter((part) => part.kind === "glazed" && part.side === "front")
    .reduce((sum, part) => sum + part.area, 0);
  const water = WATER_PER_GLAZING * front;
  add(
    "water barrels",
    `${showSi(water, "volume", 1)} (${showUs(water, "volume")}) more water in drums`,
    {
      waterVolume: inputs.waterVolume + water,
      waterSurface: inputs.waterSurface + water * DRUM_SURFACE,
    },
  );
  return list;
}
