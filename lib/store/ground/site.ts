/** From a study's chapters to slices, tubes and control: everything that stays the same. @module */
import { airProperties, DRY_AIR_HEAT_CAPACITY, VAPOUR_HEAT_CAPACITY } from "../../air/mod.ts";
import { InputError } from "../../basics/mod.ts";
import type { FanResult } from "../../fan/types.ts";
import type { HeadersResult } from "../../headers/types.ts";
import type { HouseInputs } from "../../house/types.ts";
import { type SoilInputs, type SoilResult, studyLayers } from "../../soil/mod.ts";
import type { TubesInputs, TubesResult } from "../../tubes/types.ts";
import type { ClimateYear } from "../../climate/types.ts";
import { plateEfficiency } from "../air/collector.ts";
import { PRODUCTION_MESH, type SliceMesh, sliceMesh } from "./mesh.ts";
import {
  type ConductionOperator,
  sliceOperator,
  type SoilBoard,
  type SoilZone,
} from "./operator.ts";
import { type SaturationTable, saturationTable } from "../air/saturation.ts";
import { type TubeField, tubeField } from "../air/tube_field.ts";
import type { StoreInputs } from "../types.ts";

/** What the store chapter is given. */
export interface StoreRequest {
  /** house section of the study */
  readonly inputs: StoreInputs;
  /** weather of the year */
  readonly climate: ClimateYear;
  /** soil section of the study */
  readonly soilInputs: SoilInputs;
  /** soil section in SI */
  readonly soil: Pick<SoilResult, "properties" | "wave">;
  /** house section of the study */
  readonly houseInputs: HouseInputs;
  /** tubes section of the study */
  readonly tubesInputs: TubesInputs;
  /** tubes section in SI */
  readonly tubes: Pick<
    TubesResult,
    "product" | "count" | "length" | "diameter" | "positions" | "filmCoefficient"
  >;
  /** flow of each tube over the mean */
  readonly headers: Pick<HeadersResult, "shares">;
  /** m³/s and W of the operating point, kg/m³ */
  readonly fan: Pick<FanResult, "airFlow" | "power" | "density">;
}

/** The store as built: mesh, conduction, tubes, lengths. Plain data. */
export interface StoreSite {
  readonly mesh: SliceMesh;
  readonly operator: ConductionOperator;
  readonly field: TubeField;
  readonly saturation: SaturationTable;
  /** slices with tubes; one more without tubes may follow */
  readonly slices: number;
  /** m of house behind each lane of the soil (a half slice counts twice) */
  readonly lengths: Float64Array;
  /** m of tube over m of soil in a slice: 1 unless the tubes are longer than the house */
  readonly tubeLengthFactor: number;
  /** W/K and kg/s of dry air, all tubes */
  readonly heatRate: number;
  readonly airRate: number;
  /** W electric while the fan runs */
  readonly fanPower: number;
  /** K of the charging air for each W of sun that comes into the house: the plate collector */
  readonly collectorRise: number;
  /** m², all of the floor */
  readonly floorArea: number;
}

/** kg of water per m² of wall held as film and in the corrugations; common practice, no source. */
const FILM_WATER = 0.1;

/** The house's extent across and along the tubes, m. */
function extents(request: StoreRequest): { across: number; along: number } {
  const { houseInputs, tubesInputs } = request;
  return tubesInputs.direction === "along"
    ? { across: houseInputs.width, along: houseInputs.length }
    : { across: houseInputs.length, along: houseInputs.width };
}

/** Most by which the flows of a mirrored pair may differ, over the mean, to be run as one. */
const PAIR_DIFFERENCE = 0.1;

/** Place of each tube's mirror image about the middle of the house; null where one has none. */
function mirrorImages(request: StoreRequest): number[] | null {
  const { positions } = request.tubes;
  const images = positions.map((tube) =>
    positions.findIndex((other) =>
      Math.abs(other.x + tube.x) < 1e-6 && Math.abs(other.depth - tube.depth) < 1e-6
    )
  );
  return images.includes(-1) ? null : images;
}

/**
 * Flow of each tube, and whether half the slice will do: tubes must mirror about the middle, and the
 * flows of a pair nearly so. A pair is run at its mean flow; what that misses is of second order in
 * the difference (5 % either side of the mean: below 0.1 % of the heat).
 */
function flowShares(request: StoreRequest): { readonly half: boolean; readonly shares: number[] } {
  const shares = request.tubes.positions.map((_, k) => request.headers.shares[k] ?? 1);
  const images = mirrorImages(request);
  const half = images !== null &&
    images.every((image, k) => Math.abs(shares[image]! - shares[k]!) <= PAIR_DIFFERENCE);
  return {
    half,
    shares: half ? shares.map((share, k) => (share + shares[images[k]!]!) / 2) : shares,
  };
}

function boards(request: StoreRequest): SoilBoard[] {
  const { houseInputs, inputs } = request;
  const found: SoilBoard[] = [];
  if (houseInputs.edgeInsulation > 0 && houseInputs.edgeInsulationDepth > 0) {
    found.push({
      kind: "edge",
      depth: houseInputs.edgeInsulationDepth,
      resistance: houseInputs.edgeInsulation,
    });
  }
  if ((inputs.flatBoardResistance ?? 0) > 0 && (inputs.flatBoardDepth ?? 0) > 0) {
    found.push({
      kind: "flat",
      depth: inputs.flatBoardDepth!,
      resistance: inputs.flatBoardResistance!,
    });
  }
  return found;
}

/** Soils by depth as the soil chapter has them, and the bed around the tubes where there is one. */
function soilZones(request: StoreRequest): SoilZone[] {
  const zones: SoilZone[] = [];
  let top = 0;
  for (const { thickness, properties } of studyLayers(request.soilInputs)) {
    zones.push({
      within: Infinity,
      from: top,
      to: top + thickness,
      conductivity: properties.conductivity,
      heatCapacity: properties.heatCapacity,
    });
    top += thickness;
  }
  const bed = request.inputs.gravelBed;
  if (bed === undefined) return zones;
  const depths = request.tubes.positions.map((tube) => tube.depth);
  return [...zones, {
    within: Math.max(...request.tubes.positions.map((tube) => Math.abs(tube.x))) + bed.margin,
    from: Math.min(...depths) - bed.margin,
    to: Math.max(...depths) + bed.margin,
    conductivity: bed.conductivity,
    heatCapacity: bed.heatCapacity,
  }];
}

/**
 * Film coefficient at another flow than the tubes chapter's: turbulent film goes with flow^0.8
 * (Dittus & Boelter 1930).
 */
function filmAt(request: StoreRequest, share: number): number {
  const { tubes, fan, tubesInputs } = request;
  return tubes.filmCoefficient * (share * fan.airFlow / tubesInputs.airFlow) ** 0.8;
}

/** degC at which the collector's efficiency is taken, common practice, no source. */
const COLLECTOR_AIR = 20;

/**
 * K of the charging air for each W of sun in the house. The sun on the plate is part of the sun the
 * house already counts, so the air takes it and the rest of the house goes without.
 */
function collectorRise(request: StoreRequest, heatRate: number): number {
  const plate = request.inputs.collector;
  if (plate === undefined) return 0;
  const pressure = request.climate.pressure[0]!;
  const air = airProperties(COLLECTOR_AIR, pressure);
  const efficiency = plateEfficiency(plate, {
    suction: request.fan.airFlow / plate.area,
    crosswind: 0,
    density: air.density,
    kinematicViscosity: air.viscosity / air.density,
    conductivity: air.conductivity,
    heatCapacity: air.heatCapacity,
  }, COLLECTOR_AIR);
  return efficiency * plate.sunShare / heatRate;
}

/** Settings of the mesh that refined runs may change. */
export interface MeshSettings {
  readonly blockCells: number;
  readonly growth: number;
  readonly surfaceCell: number;
  readonly largestCell: number;
}

/**
 * Builds the store of a study.
 *
 * @param request inputs and the results of the earlier chapters
 * @param floorFilm W/(m² K) of the house's floor
 * @param floorArea m², of the house
 * @param mesh settings, production unless said
 * @throws {InputError} where the tubes do not fit
 */
export function storeSite(
  request: StoreRequest,
  floorFilm: number,
  floorArea: number,
  meshSettings: MeshSettings = PRODUCTION_MESH,
): StoreSite {
  const { inputs, soil, tubes, fan } = request;
  const { across } = extents(request);
  const along = floorArea / across;
  if (tubes.positions.some((tube) => Math.abs(tube.x) > across / 2 + inputs.outsideSoil - 0.5)) {
    throw new InputError("the tube field is wider than the soil mesh: fewer tubes or less spacing");
  }
  const { half, shares } = flowShares(request);
  const tubeRadius = tubes.product.outsideDiameter / 2;
  const waterTable = request.soilInputs.waterTableDepth;
  const deepHeld = inputs.groundWaterMoves === true && waterTable !== null &&
    waterTable > lowestTube(tubes) + 0.5 &&
    waterTable < inputs.meshDepth;
  const depth = deepHeld ? waterTable : inputs.meshDepth;
  const soilBoards = boards(request);
  const mesh = sliceMesh({
    floorWidth: across,
    outsideSoil: inputs.outsideSoil,
    depth,
    tubes: tubes.positions,
    tubeRadius,
    half,
    ...meshSettings,
    faces: soilBoards.map((board) => board.depth),
  });
  const operator = sliceOperator(mesh, {
    conductivity: soil.properties.conductivity,
    heatCapacity: soil.properties.heatCapacity,
    zones: soilZones(request),
    boards: soilBoards,
    floorFilm,
    outdoorFilm: Infinity,
    deepHeld,
    tubeRadius,
  });
  const kept = tubes.positions
    .map((tube, k) => ({ tube, share: shares[k]! }))
    .filter(({ tube }) => !half || tube.x > -1e-6);
  const moist = DRY_AIR_HEAT_CAPACITY + 0.006 * VAPOUR_HEAT_CAPACITY;
  const airRate = fan.airFlow * fan.density;
  const field = tubeField({
    operator,
    slices: inputs.slices,
    length: tubes.length,
    half,
    perimeter: Math.PI * tubes.diameter,
    filmWater: FILM_WATER,
    tubes: kept.map(({ share }) => {
      const rate = airRate * share / tubes.count;
      return {
        heatRate: rate * moist,
        airRate: rate,
        film: Math.PI * tubes.diameter * filmAt(request, share),
      };
    }),
  });
  const copies = half ? 2 : 1;
  const covered = Math.min(along, tubes.length);
  const slice = covered / inputs.slices;
  const rest = along - covered;
  const lengths = [
    ...new Array<number>(inputs.slices).fill(slice * copies),
    ...(rest > 0.05 ? [rest * copies] : []),
  ];
  if (rest <= 0.05 && rest > 0) {
    lengths.forEach((_, k) => lengths[k]! += rest * copies / inputs.slices);
  }
  return {
    mesh,
    operator,
    field,
    saturation: saturationTable(
      request.climate.pressure.reduce((sum, value) => sum + value, 0) /
        request.climate.pressure.length,
    ),
    slices: inputs.slices,
    lengths: Float64Array.from(lengths),
    tubeLengthFactor: field.segment * copies / lengths[0]!,
    heatRate: airRate * moist,
    airRate,
    fanPower: fan.power,
    collectorRise: collectorRise(request, airRate * moist),
    floorArea,
  };
}

/** m, centre of the lowest tube. */
export function lowestTube(tubes: StoreRequest["tubes"]): number {
  return Math.max(...tubes.positions.map((tube) => tube.depth));
}
