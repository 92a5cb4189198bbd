/** The floor's own soil: a column of layers that loses heat sideways to the outside ground. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";
import { type SoilProperties, type SoilResult, undisturbedTemperature } from "../../soil/mod.ts";
import { type SectionHeat, sectionHeat } from "./edge_loss.ts";
import { FLOOR_FILM } from "../skin/films.ts";
import type { HouseBoundary, HouseGeometry, HouseInputs } from "../types.ts";

/** m, faces of the layers */
const FACES = [0, 0.03, 0.08, 0.16, 0.27, 0.42, 0.62, 0.9, 1.3, 1.8, 2.5, 3.4, 4.6, 6.2, 8.5, 12];
const WALL_WIDTH = 0.2;
/** W/(m² K) of open ground outside (wind and radiation, common practice, no source) */
const OUTSIDE_GROUND_FILM = 20;

/** Edge of the floor for {@link edgeLoss}. */
export type EdgeInputs =
  & Pick<HouseInputs, "edgeInsulation" | "edgeInsulationDepth">
  & Pick<Partial<HouseInputs>, "edgeInsulationWing">;

/**
 * Steady loss of the floor through the ground to outside, per metre of perimeter, by depth.
 *
 * The floor is a strip of half width area/perimeter, which has the same edge for its area (ISO
 * 13370 [iso-13370-2017], characteristic dimension; from memory).
 *
 * @param geometry floor area and perimeter
 * @param edge insulation around the floor
 * @param conductivity W/(m K)
 * @returns the section; `perMetre` in W/(m K)
 */
export function edgeLoss(
  geometry: Pick<HouseGeometry, "floorArea" | "perimeter">,
  edge: EdgeInputs,
  conductivity: number,
): SectionHeat {
  return sectionHeat({
    halfWidth: geometry.floorArea / geometry.perimeter,
    wallWidth: WALL_WIDTH,
    wallBase: "adiabatic",
    conductivity,
    insideFilm: FLOOR_FILM,
    outsideFilm: OUTSIDE_GROUND_FILM,
    insulation: edge.edgeInsulation,
    insulationDepth: edge.edgeInsulation > 0 ? edge.edgeInsulationDepth : 0,
    insulationWing: edge.edgeInsulation > 0 ? edge.edgeInsulationWing ?? 0 : 0,
    finest: 0.02,
    growth: 1.35,
  });
}

/** Layers under the floor, heat per kelvin in W/K and J/K over the whole floor. */
export interface FloorColumn {
  /** m, middle of each layer */
  readonly depths: Float64Array;
  /** J/(m² K), by cell */
  readonly capacity: Float64Array;
  /** W/K to the next layer down */
  readonly downward: Float64Array;
  /** W/K sideways to the outside ground at the same depth */
  readonly sideways: Float64Array;
  /** W/K from the floor surface to the middle of the first layer */
  readonly surface: number;
  /** W/K of the floor's film */
  readonly film: number;
  /** degC of the outside ground: layer by layer for each day, [day·layers + layer] */
  readonly outside: Float64Array;
  /** W/(m K) */
  readonly edgeLossFactor: number;
}

/** What {@link floorColumn} needs. */
export interface FloorColumnInputs {
  /** geometry worked out from the inputs */
  readonly geometry: HouseGeometry;
  /** insulation around the edge */
  readonly edge: EdgeInputs;
  /** thermal properties of the soil */
  readonly properties: SoilProperties;
  /** undisturbed ground */
  readonly wave: SoilResult["wave"];
}

/** Integral of layer values over a span, layers between faces. */
function overlap(faces: Float64Array, values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let j = 0; j < values.length; j++) {
    const [top, bottom] = [Math.max(from, faces[j]!), Math.min(to, faces[j + 1]!)];
    if (bottom > top) sum += values[j]! * (bottom - top) / (faces[j + 1]! - faces[j]!);
  }
  return sum;
}

/**
 * Builds the column. Its sideways conductances are the heat that crosses the floor's edge in the
 * steady plane section at each depth over the mean temperature under the floor there, so that the
 * column and the section lose the same heat in the steady state; what crosses below the column
 * leaves from its last layer.
 */
export function floorColumn(inputs: FloorColumnInputs): FloorColumn {
  const { geometry, properties, wave } = inputs;
  const section = edgeLoss(geometry, inputs.edge, properties.conductivity);
  const layers = FACES.length - 1;
  const area = geometry.floorArea;
  const thickness = FACES.slice(1).map((face, i) => face - FACES[i]!);
  const depths = Float64Array.from(thickness, (height, i) => FACES[i]! + height / 2);
  const heights = section.faces.slice(1).map((face, j) => face - section.faces[j]!);
  const weighted = section.meanUnderFloor.map((value, j) => value * heights[j]!);
  const sideways = Float64Array.from(thickness, (height, i) => {
    const deepest = i === layers - 1 ? Infinity : FACES[i + 1]!;
    const heat = overlap(section.faces, section.sideways, FACES[i]!, deepest);
    const mean = overlap(section.faces, weighted, FACES[i]!, FACES[i + 1]!) / height;
    return geometry.perimeter * heat / mean;
  });
  const k = properties.conductivity;
  const days = HOURS_PER_YEAR / 24;
  const outside = new Float64Array(days * layers);
  for (let day = 0; day < days; day++) {
    for (let i = 0; i < layers; i++) {
      outside[day * layers + i] = undisturbedTemperature(wave, depths[i]!, day + 0.5);
    }
  }
  return {
    depths,
    capacity: Float64Array.from(thickness, (height) => properties.heatCapacity * area * height),
    downward: Float64Array.from(
      thickness,
      (height, i) => i + 1 < layers ? k * area / ((height + thickness[i + 1]!) / 2) : 0,
    ),
    sideways,
    surface: k * area / (thickness[0]! / 2),
    film: FLOOR_FILM * area,
    outside,
    edgeLossFactor: section.perMetre,
  };
}

/** The column's implicit step of one length, factored once. */
export interface FloorStepper {
  /** W/K between what drives the floor surface and the soil's answer, film in series */
  readonly conductance: number;
  /** Prepares a step; gives the temperature the first layer would have without floor heat. */
  prepare(temperatures: Float64Array, hour: number): number;
  /** Ends the step with the heat that went in, W; gives the heat that left sideways, W. */
  finish(temperatures: Float64Array, heat: number, hour: number): number;
}

/** Backward Euler for the column, split so that the floor's heat can be found in between. */
export function floorStepper(column: FloorColumn, stepSeconds: number): FloorStepper {
  const layers = column.depths.length;
  const store = column.capacity.map((heat) => heat / stepSeconds);
  const pivot = new Float64Array(layers);
  const factor = new Float64Array(layers);
  for (let i = 0; i < layers; i++) {
    const up = i > 0 ? column.downward[i - 1]! : 0;
    const full = store[i]! + up + column.downward[i]! + column.sideways[i]!;
    factor[i] = i > 0 ? up / pivot[i - 1]! : 0;
    pivot[i] = full - (i > 0 ? factor[i]! * up : 0);
  }
  const free = new Float64Array(layers);
  const solve = (values: Float64Array) => {
    for (let i = 1; i < layers; i++) values[i] = values[i]! + factor[i]! * values[i - 1]!;
    values[layers - 1] = values[layers - 1]! / pivot[layers - 1]!;
    for (let i = layers - 2; i >= 0; i--) {
      values[i] = (values[i]! + column.downward[i]! * values[i + 1]!) / pivot[i]!;
    }
  };
  const unit = new Float64Array(layers);
  unit[0] = 1;
  solve(unit);
  const outsideAt = (hour: number) => Math.floor(hour / 24) * layers;
  return {
    conductance: 1 / (1 / column.film + 1 / column.surface + unit[0]!),
    prepare(temperatures, hour) {
      const day = outsideAt(hour);
      for (let i = 0; i < layers; i++) {
        free[i] = store[i]! * temperatures[i]! + column.sideways[i]! * column.outside[day + i]!;
      }
      solve(free);
      return free[0]!;
    },
    finish(temperatures, heat, hour) {
      const day = outsideAt(hour);
      let lost = 0;
      for (let i = 0; i < layers; i++) {
        const value = free[i]! + heat * unit[i]!;
        temperatures[i] = value;
        lost += column.sideways[i]! * (value - column.outside[day + i]!);
      }
      return lost;
    },
  };
}

/** Steady temperatures of the column for a constant driving temperature of the floor surface. */
export function steadyColumn(column: FloorColumn, driving: number): Float64Array {
  const layers = column.depths.length;
  const days = column.outside.length / layers;
  const top = 1 / (1 / column.film + 1 / column.surface);
  const pivot = new Float64Array(layers);
  const values = new Float64Array(layers);
  for (let i = 0; i < layers; i++) {
    let ground = 0;
    for (let day = 0; day < days; day++) ground += column.outside[day * layers + i]! / days;
    const up = i > 0 ? column.downward[i - 1]! : top;
    pivot[i] = up + column.downward[i]! + column.sideways[i]!;
    values[i] = column.sideways[i]! * ground + (i === 0 ? top * driving : 0);
    if (i > 0) {
      pivot[i] = pivot[i]! - up * up / pivot[i - 1]!;
      values[i] = values[i]! + up / pivot[i - 1]! * values[i - 1]!;
    }
  }
  values[layers - 1] = values[layers - 1]! / pivot[layers - 1]!;
  for (let i = layers - 2; i >= 0; i--) {
    values[i] = (values[i]! + column.downward[i]! * values[i + 1]!) / pivot[i]!;
  }
  return values;
}

/** Boundary of a house that has a floor column and no tubes. */
export function floorBoundary(stepper: FloorStepper, floorTemperature: number): HouseBoundary {
  return {
    floorConductance: stepper.conductance,
    floorTemperature,
    storeHeat: 0,
    storeSlope: 0,
    storeReference: 0,
    storeVapour: 0,
  };
}
