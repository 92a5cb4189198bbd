/** The usual improvements of a house, as far as it does not have them. @module */
import { sum } from "d3-array";
import { showBoth, showSi, showUs } from "../units/mod.ts";
import { usualCurtain } from "./skin/curtain.ts";
import { houseGeometry } from "./skin/geometry.ts";
import { findGlazing } from "./skin/glazing_table.ts";
import { DRUM_VOLUME, drumsInRow, drumSurface } from "./barrels_and_masonry.ts";
import type { HouseInputs, SkinPart } from "./types.ts";
import { layerResistance, WALL_FILMS } from "./skin/walls.ts";

/** How much of a measure is built. */
export interface MeasureWork {
  /** m², m or a number of pieces */
  readonly amount: number;
  /** unit of the amount */
  readonly unit: "m²" | "m" | "pieces";
}

/** A changed house. */
export interface HouseMeasure {
  /** id under which a price list prices it */
  readonly id: string;
  /** what is built, as far as it is priced */
  readonly work: MeasureWork;
  /** short name */
  readonly name: string;
  /** what was changed */
  readonly change: string;
  /** the house with it */
  readonly inputs: HouseInputs;
}

/** m, thickness of the board that is added. */
const BOARD_THICK = 0.05;
/** m² K/W of it. */
const BOARD = layerResistance({ material: "closed-cell-board", thickness: BOARD_THICK });
const BOARD_WORDS = `${showBoth(BOARD_THICK, "smallLength")} closed-cell board`;
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
  const { parts, perimeter } = houseGeometry(inputs);
  const backOf = (element: SkinPart["element"]) =>
    area((part) => part.side === "back" && part.element === element);
  const area = (which: (part: SkinPart) => boolean): MeasureWork => ({
    amount: sum(parts.filter(which), (part) => part.area),
    unit: "m²",
  });
  const add = (
    id: string,
    name: string,
    change: string,
    work: MeasureWork,
    changed: Partial<HouseInputs>,
  ) => list.push({ id, name, change, work, inputs: { ...inputs, ...changed } });
  add("sealing", "sealing", "leakage halved", area(() => true), {
    leakage: inputs.leakage / 2,
    leakageWind: inputs.leakageWind / 2,
  });
  const next = findGlazing(inputs.glazing).nextBetter;
  if (next !== null) {
    add(
      "glazing-layer",
      "one more layer of glazing",
      `${inputs.glazing} to ${next}`,
      area(({ kind }) => kind === "glazed"),
      { glazing: next },
    );
  }
  const knee = inputs.kneeWallHeight > 0;
  const height = knee ? inputs.kneeWallHeight : Math.min(0.9, inputs.eaveHeight);
  add(
    "wall-board",
    "knee-wall insulation",
    knee
      ? BOARD_WORDS
      : `lowest ${showBoth(height, "length")} covered with ${
        showBoth(BOARD_THICK, "smallLength")
      } foam board`,
    knee
      ? area(({ element }) => element === "knee wall")
      : { amount: height * perimeter, unit: "m²" },
    { kneeWallHeight: height, kneeWall: knee ? insulated(inputs.kneeWall) : insulated("glazed") },
  );
  if (inputs.northWall === "glazed" || inputs.northWall > 0.35) {
    add("wall-board", "north wall insulation", BOARD_WORDS, backOf("wall"), {
      northWall: insulated(inputs.northWall),
    });
  }
  if (inputs.shape !== "lean-to" && (inputs.northRoof === "glazed" || inputs.northRoof > 0.35)) {
    add("wall-board", "north roof insulation", BOARD_WORDS, backOf("roof"), {
      northRoof: insulated(inputs.northRoof),
    });
  }
  if (inputs.edgeInsulation < BOARD || inputs.edgeInsulationDepth < 0.6) {
    const board: MeasureWork = { amount: 0.6 * perimeter, unit: "m²" };
    add(
      "perimeter-board",
      "perimeter foam",
      `${BOARD_WORDS}, ${showBoth(0.6, "length")} deep`,
      board,
      {
        edgeInsulation: Math.max(BOARD, inputs.edgeInsulation),
        edgeInsulationDepth: Math.max(0.6, inputs.edgeInsulationDepth),
      },
    );
  }
  if (inputs.curtain === null) {
    const curtain = usualCurtain(inputs.heatSetPoint);
    const { resistance, coverage, edgeLeak } = curtain;
    add(
      "curtain",
      "night curtain",
      `${showBoth(resistance, "resistance")}, ${showSi(coverage, "share")} covered, ` +
        `edges leak ${showSi(edgeLeak, "share")}`,
      area(({ kind }) => kind === "glazed"),
      { curtain },
    );
  } else {
    const edges: MeasureWork = { amount: 2 * perimeter, unit: "m" };
    add("curtain-edge", "curtain edges sealed", "edge leak cut to a third", edges, {
      curtain: { ...inputs.curtain, edgeLeak: inputs.curtain.edgeLeak / 3 },
    });
  }
  const front = area(({ kind, side }) => kind === "glazed" && side === "front").amount;
  const water = WATER_PER_GLAZING * front;
  const drums = water / DRUM_VOLUME;
  const high = Math.ceil(drums / drumsInRow(inputs.length));
  add(
    "barrel",
    "water barrels",
    `${showSi(water, "volume", 1)} (${showUs(water, "volume")}) more water in drums side by side ` +
      `along the back wall${high > 1 ? `, ${high} high in a rack` : ""}`,
    { amount: Math.ceil(drums), unit: "pieces" },
    {
      waterVolume: inputs.waterVolume + water,
      waterSurface: inputs.waterSurface + drumSurface(drums, inputs.length),
    },
  );
  return list;
}
