/** The floor's own soil: a column of layers that loses heat sideways to the outside ground. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";
import {
  commonCurve,
  type FreezingCurve,
  type FreezingLumps,
  type FrozenLump,
  lumpsIn,
  type SoilLayer,
  type SoilProperties,
  type SoilResult,
  undisturbedTemperature,
} from "../../soil/mod.ts";
import { type ConductingLayer, type SectionHeat, sectionHeat, sidewaysOf } from "./edge_loss.ts";
import { overLayers } from "./layers.ts";
import { FLOOR_FILM } from "../skin/films.ts";
import type { HouseGeometry, HouseInputs } from "../types.ts";

/** m, faces of the layers */
const FACES = [0, 0.03, 0.08, 0.16, 0.27, 0.42, 0.62, 0.9, 1.3, 1.8, 2.5, 3.4, 4.6, 6.2, 8.5, 12];
/** m of wall base between floor and open ground. */
export const WALL_WIDTH = 0.2;
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
 * @param film W/(m² K) of the floor, the bare one unless given
 * @param layers conductivities by depth, W/(m K); absent: one all the way down
 * @returns the section; `perMetre` in W/(m K)
 */
export function edgeLoss(
  geometry: Pick<HouseGeometry, "floorArea" | "perimeter">,
  edge: EdgeInputs,
  conductivity: number,
  film: number = FLOOR_FILM,
  layers?: readonly ConductingLayer[],
): SectionHeat {
  return sectionHeat({
    halfWidth: geometry.floorArea / geometry.perimeter,
    wallWidth: WALL_WIDTH,
    wallBase: "adiabatic",
    conductivity,
    insideFilm: film,
    layers,
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
  /** J of latent heat by layer over the whole floor; absent where nothing freezes */
  readonly water?: FreezingLumps | undefined;
  /** how the soil conducts frozen; null where as unfrozen */
  readonly curve: FreezingCurve | null;
}

/** What {@link floorColumn} needs. */
export interface FloorColumnInputs {
  /** geometry worked out from the inputs */
  readonly geometry: HouseGeometry;
  /** insulation around the edge */
  readonly edge: EdgeInputs;
  /** thermal properties of the soil where no layers are given; nothing of it freezes */
  readonly properties: SoilProperties;
  /** undisturbed ground */
  readonly wave: SoilResult["wave"];
  /** soils from the surface down, each with its own properties and water, the last to the bottom */
  readonly layers?: readonly SoilLayer[] | undefined;
  /** W/(m² K) of the floor and what lies on it; the bare floor's unless given */
  readonly film?: number;
}

/** Water of each layer of the column; a layer that two soils share has its part of both. */
function floorLumps(soils: readonly SoilLayer[], area: number): FrozenLump[] {
  return FACES.slice(1).map((bottom, i) => {
    const top = FACES[i]!;
    const all = (of: (soil: SoilProperties) => number) =>
      overLayers(soils, top, bottom, ({ properties }) => of(properties));
    return {
      latent: area * all((soil) => soil.latentHeat),
      range: all((soil) => soil.freezingRange) / (bottom - top),
      capacity: area * all((soil) => soil.heatCapacity),
      frozenCapacity: area * all((soil) => soil.frozenHeatCapacity),
      ratio: all((soil) => soil.frozenConductivity) / all((soil) => soil.conductivity),
    };
  });
}

/** m down to which the soil's curve of conduction is taken: where a floor freezes. */
const FROST_DEPTH = 1.3;

/**
 * Builds the column. Its sideways conductances are the heat that crosses the floor's edge in the
 * steady plane section at each depth over the mean temperature under the floor there, so that the
 * column and the section lose the same heat in the steady state; what crosses below the column
 * leaves from its last layer.
 */
export function floorColumn(inputs: FloorColumnInputs): FloorColumn {
  const { geometry, properties, wave } = inputs;
  const film = inputs.film ?? FLOOR_FILM;
  const layers = FACES.length - 1;
  const area = geometry.floorArea;
  const soils = inputs.layers ?? [{ thickness: Infinity, properties }];
  const conducting = soils.map((soil) => ({
    thickness: soil.thickness,
    conductivity: soil.properties.conductivity,
  }));
  const section = edgeLoss(geometry, inputs.edge, properties.conductivity, film, conducting);
  const lumps = floorLumps(soils, area);
  const curve = inputs.layers === undefined
    ? null
    : commonCurve(lumps.filter((_, i) => FACES[i + 1]! <= FROST_DEPTH));
  const thickness = FACES.slice(1).map((face, i) => face - FACES[i]!);
  const depths = Float64Array.from(thickness, (height, i) => FACES[i]! + height / 2);
  const sideways = Float64Array.from(thickness, (_, i) => {
    const deepest = i === layers - 1 ? Infinity : FACES[i + 1]!;
    const { heat, mean } = sidewaysOf(section, FACES[i]!, FACES[i + 1]!, deepest);
    return geometry.perimeter * heat / mean;
  });
  const resistance = (from: number, to: number) =>
    overLayers(conducting, from, to, (layer) => 1 / layer.conductivity);
  const days = HOURS_PER_YEAR / 24;
  const outside = new Float64Array(days * layers);
  for (let day = 0; day < days; day++) {
    for (let i = 0; i < layers; i++) {
      outside[day * layers + i] = undisturbedTemperature(wave, depths[i]!, day + 0.5);
    }
  }
  return {
    depths,
    capacity: Float64Array.from(lumps, (lump) => lump.capacity),
    downward: depths.map((depth, i) =>
      i + 1 < layers ? area / resistance(depth, depths[i + 1]!) : 0
    ),
    sideways,
    surface: area / resistance(0, depths[0]!),
    film: film * area,
    outside,
    edgeLossFactor: section.perMetre,
    water: inputs.layers === undefined ? undefined : lumpsIn(curve, lumps),
    curve,
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
