/** The store's soil made ready: site, reduced slice, undisturbed start. @module */
import { samePlain } from "../../basics/mod.ts";
import { FLOOR_FILM, houseGeometry } from "../../house/mod.ts";
import type { HouseModel } from "../../house/types.ts";
import { undisturbedTemperature } from "../../soil/mod.ts";
import { type ReducedEngine, reducedEngine } from "../solver/reduced/engine.ts";
import { reducedState } from "../solver/reduced/fields.ts";
import { type ReducedSlice, reduceSlice } from "../solver/reduced/reduction.ts";
import type { ConductionOperator } from "../ground/operator.ts";
import { type FreezingZone, freezingZones } from "../ground/zones.ts";
import { type StoreRequest, type StoreSite, storeSite } from "../site.ts";
import { SETTLING_STEPS, YEAR_STEPS } from "../step_report.ts";

/** What all runs of one store share. */
export interface SoilModel {
  readonly site: StoreSite;
  readonly slice: ReducedSlice;
  /** degC of every cell of the undisturbed ground on 1 January */
  readonly undisturbed: Float64Array;
  /** s, step lengths of its years; those of a study unless given */
  readonly steps?: readonly number[] | undefined;
}

/** Undisturbed ground in the cells of a site, degC. */
export function undisturbedCells(site: StoreSite, request: StoreRequest, day = 0): Float64Array {
  const byRow = Array.from(
    site.mesh.depths,
    (depth) => undisturbedTemperature(request.soil.wave, depth, day),
  );
  return Float64Array.from(
    site.operator.capacity,
    (_, cell) => byRow[Math.floor(cell / site.mesh.columns)]!,
  );
}

/** A slice of soil, and where its water freezes: all that its reduction hangs on. */
export interface SliceQuestion {
  readonly operator: ConductionOperator;
  readonly zones: readonly FreezingZone[];
  /** states kept at least; as many as its ports ask for unless given */
  readonly least?: number | undefined;
}

/** What is to be reduced of a site. */
export function sliceQuestion({ mesh, operator }: StoreSite): SliceQuestion {
  return { operator, zones: freezingZones(mesh, operator) };
}

/** Slices kept: the plan's, with tubes and without, and those of the three changes tried last. */
const KEPT = 8;
const known: { readonly of: SliceQuestion; readonly slice: ReducedSlice }[] = [];

function keptSlice(question: SliceQuestion): ReducedSlice | undefined {
  return known.find(({ of }) => samePlain(of, question))?.slice;
}

/** True where the answer is at hand. */
export function isKept(question: SliceQuestion): boolean {
  return keptSlice(question) !== undefined;
}

/**
 * The reduced slice. Another house above it, longer tubes or a reversed flow leave the slice as it is,
 * and reducing it takes longer than running a year.
 */
export function reducedSlice(question: SliceQuestion): ReducedSlice {
  const found = keptSlice(question);
  if (found !== undefined) return found;
  const { operator, zones, least } = question;
  const slice = reduceSlice(operator, undefined, zones, least);
  keepSlice(question, slice);
  return slice;
}

/** Keeps a slice that was reduced elsewhere, as if {@link reducedSlice} had been asked for it. */
export function keepSlice(question: SliceQuestion, slice: ReducedSlice): void {
  if (isKept(question)) return;
  known.unshift({ of: question, slice });
  known.length = Math.min(known.length, KEPT);
}

/** The site of a study's store below its own house. */
export function ownSite(request: StoreRequest): StoreSite {
  return storeSite(request, FLOOR_FILM, houseGeometry(request.houseInputs).floorArea);
}

/**
 * Builds mesh, reduced slice and start of a study's store.
 *
 * @param request inputs and the results of the earlier chapters
 * @param house above it
 * @param slice its reduced soil, where that is known
 */
export function soilModel(
  request: StoreRequest,
  house: HouseModel,
  slice?: ReducedSlice,
): SoilModel {
  const site = storeSite(request, house.floorFilm, house.geometry.floorArea);
  return {
    site,
    slice: slice ?? reducedSlice(sliceQuestion(site)),
    undisturbed: undisturbedCells(site, request),
    steps: request.fineness?.steps,
  };
}

/** An engine over all slices, starting from the undisturbed ground. */
export function freshEngine(model: SoilModel): ReducedEngine {
  const engine = reducedEngine(model.slice, model.site.lengths.length, model.steps ?? YEAR_STEPS);
  engine.load(reducedState(model.slice, engine.lanes, model.undisturbed));
  return engine;
}

/**
 * An engine for years that only settle the ground, in longer steps; null where the study's steps are not
 * the usual ones, which then hold for these years too.
 */
export function settlingEngine(model: SoilModel): ReducedEngine | null {
  return model.steps === undefined ? freshEngine({ ...model, steps: SETTLING_STEPS }) : null;
}
