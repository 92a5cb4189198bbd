/** From a study's chapters to slices, tubes and control: everything that stays the same. @module */
import { mean } from "d3-array";
import { sum } from "d3-array";
import { InputError } from "../basics/mod.ts";
import { WALL_WIDTH } from "../house/mod.ts";
import { flowShares } from "./air/flow_shares.ts";
import { type SaturationTable, saturationTable } from "./air/saturation.ts";
import type { ModeFlow } from "./air/flow_air.ts";
import { airRates, fanModes, siteField } from "./air/site_tubes.ts";
import type { TubeField } from "./air/tube_field.ts";
import type { StoreRequest } from "./request.ts";
import { endWalls } from "./ground/end_walls.ts";
import {
  type MeshSettings,
  penetrationDepth,
  PRODUCTION_MESH,
  type SliceMesh,
  sliceMesh,
} from "./ground/mesh.ts";
import { type ConductionOperator, sliceOperator } from "./ground/operator.ts";
import { tubeGroups, withGroups } from "./ground/tube_groups.ts";
import { boards, lowerEnd, soilZones } from "./ground/site_soil.ts";
export type { StoreRequest } from "./request.ts";
export { lowestTube } from "./ground/site_soil.ts";

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
  /** the fan while it charges and while it discharges, against flow and density here */
  readonly modes: { readonly charge: ModeFlow; readonly discharge: ModeFlow };
  /** m below the floor, mean of all tubes */
  readonly tubeDepth: number;
  /** kg/m³ at which flow, film and power of the fan hold */
  readonly density: number;
  /** m³/s that the fan moves */
  readonly airFlow: number;
  /** m², all of the floor */
  readonly floorArea: number;
  /** true: the lower end is held at the temperature of the deep ground */
  readonly deepHeld: boolean;
}

/** The house's extent across and along the tubes, m. */
function extents(request: StoreRequest): { across: number; along: number } {
  const { houseInputs, tubesInputs } = request;
  return tubesInputs.direction === "along"
    ? { across: houseInputs.width, along: houseInputs.length }
    : { across: houseInputs.length, along: houseInputs.width };
}

/** Mesh of one slice across the tubes, and conduction in it. */
function siteSlice(
  request: StoreRequest,
  given: {
    readonly across: number;
    readonly along: number;
    readonly floorFilm: number;
    readonly half: boolean;
  },
  settings: MeshSettings,
): { readonly mesh: SliceMesh; readonly operator: ConductionOperator } {
  const { inputs, tubes, soil } = request;
  const tubeRadius = tubes.product.outsideDiameter / 2;
  const soilBoards = boards(request);
  const zones = soilZones(request);
  const { depth, held } = lowerEnd(request);
  const mesh = sliceMesh({
    floorWidth: given.across,
    outsideSoil: inputs.outsideSoil,
    depth,
    tubes: tubes.positions,
    tubeRadius,
    penetration: Math.min(...[soil.properties, ...zones].map(penetrationDepth)),
    half: given.half,
    ...settings,
    faces: soilBoards.map((board) => board.depth),
    wall: WALL_WIDTH,
    wing: soilBoards.find((board) => board.kind === "wing")?.width,
  });
  const operator = sliceOperator(mesh, {
    conductivity: soil.properties.conductivity,
    heatCapacity: soil.properties.heatCapacity,
    freezing: soil.properties,
    zones,
    boards: soilBoards,
    floorFilm: given.floorFilm,
    outdoorFilm: Infinity,
    ends: endWalls({
      along: given.along,
      wall: WALL_WIDTH,
      floorFilm: given.floorFilm,
      edge: request.houseInputs,
      conductivity: soil.properties.conductivity,
      outside: inputs.outsideSoil,
      wave: soil.wave,
      heights: mesh.heights,
    }),
    deepHeld: held,
    tubeRadius,
  });
  return { mesh, operator };
}

/** m of a house beyond its tubes that is worth a lane of its own. */
const LEAST_REST = 0.05;

/** m of house behind each lane: equal slices along the tubes, and what is left without tubes. */
function laneLengths(given: {
  readonly along: number;
  readonly tubeLength: number;
  readonly slices: number;
  readonly copies: number;
}): number[] {
  const { along, tubeLength, slices, copies } = given;
  const covered = Math.min(along, tubeLength);
  const slice = covered / slices;
  const rest = along - covered;
  const lengths = new Array<number>(slices).fill(slice * copies);
  if (rest > LEAST_REST) return [...lengths, rest * copies];
  return rest > 0 ? lengths.map((length) => length + rest * copies / slices) : lengths;
}

/** Mean flow of a group of tubes, over the mean of all, from the flow and part of each. */
function groupShare(tubes: readonly (readonly [number, number])[]): number {
  if (tubes.length === 1) return tubes[0]![0];
  return sum(tubes, ([share, part]) => share * part) / sum(tubes, ([, part]) => part);
}

/** @throws {InputError} where a tube lies outside the mesh */
function requireInMesh(request: StoreRequest, across: number): void {
  const { inputs, tubes } = request;
  if (tubes.positions.some((tube) => Math.abs(tube.x) > across / 2 + inputs.outsideSoil - 0.5)) {
    throw new InputError(
      "the tube field is wider than the soil mesh: use fewer tubes or closer spacing",
    );
  }
}

/**
 * Builds the store of a study.
 *
 * @param request inputs and the results of the earlier chapters
 * @param floorFilm W/(m² K) of the house's floor
 * @param floorArea m², of the house
 * @param meshSettings cells; those of the request, else of production, unless given
 * @throws {InputError} where the tubes do not fit
 */
export function storeSite(
  request: StoreRequest,
  floorFilm: number,
  floorArea: number,
  meshSettings: MeshSettings = request.fineness?.mesh ?? PRODUCTION_MESH,
): StoreSite {
  const { inputs, tubes, fan, climate } = request;
  const { across } = extents(request);
  requireInMesh(request, across);
  const { half, shares } = flowShares(request);
  const { mesh, operator: single } = siteSlice(
    request,
    { across, along: floorArea / across, floorFilm, half },
    meshSettings,
  );
  const modelled = shares.filter((_, k) => !half || tubes.positions[k]!.x > -1e-6);
  const groups = tubeGroups(single, modelled, half, request.rough);
  const operator = withGroups(single, groups);
  const field = siteField(request, operator, {
    half,
    shares: groups.map((group) =>
      groupShare(group.map((k) => [modelled[k]!, single.tubes[k]!.part]))
    ),
  });
  const lengths = laneLengths({
    along: floorArea / across,
    tubeLength: tubes.length,
    slices: inputs.slices,
    copies: field.copies,
  });
  const { airRate, heatRate } = airRates(fan);
  return {
    mesh,
    operator,
    field,
    saturation: saturationTable(
      climate.pressure.reduce((sum, value) => sum + value, 0) / climate.pressure.length,
    ),
    slices: inputs.slices,
    lengths: Float64Array.from(lengths),
    tubeLengthFactor: field.segment * field.copies / lengths[0]!,
    heatRate,
    airRate,
    modes: fanModes(fan),
    tubeDepth: mean(tubes.positions, (tube) => tube.depth)!,
    density: fan.density,
    airFlow: fan.airFlow,
    floorArea,
    deepHeld: lowerEnd(request).held,
  };
}
