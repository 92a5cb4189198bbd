/** The store's soil made ready: site, reduced slice, undisturbed start. @module */
import { samePlain } from "../../basics/mod.ts";
import type { HouseModel } from "../../house/types.ts";
import { undisturbedTemperature } from "../../soil/mod.ts";
import { type ReducedEngine, reducedEngine } from "../solver/reduced/engine.ts";
import { reducedState } from "../solver/reduced/fields.ts";
import { type ReducedSlice, reduceSlice } from "../solver/reduced/reduction.ts";
import { freezingZones } from "../ground/zones.ts";
import { type StoreRequest, type StoreSite, storeSite } from "../site.ts";
import { YEAR_STEPS } from "../step_report.ts";

/** What all runs of one store share. */
export interface SoilModel {
  readonly site: StoreSite;
  readonly slice: ReducedSlice;
  /** degC of every cell of the undisturbed ground on 1 January */
  readonly undisturbed: Float64Array;
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

/** Slices kept: the plan's, and those of the changes tried last. */
const KEPT = 4;
const known: { readonly of: Pick<StoreSite, "mesh" | "operator">; readonly slice: ReducedSlice }[] =
  [];

/**
 * The reduced slice of a site. Another house above it, longer tubes or a reversed flow leave the
 * slice as it is, and reducing it takes longer than running a year.
 */
function keptSlice({ mesh, operator }: StoreSite): ReducedSlice {
  const found = known.find(({ of }) => samePlain(of, { mesh, operator }));
  if (found !== undefined) return found.slice;
  const slice = reduceSlice(operator, undefined, freezingZones(mesh, operator));
  known.unshift({ of: { mesh, operator }, slice });
  known.length = Math.min(known.length, KEPT);
  return slice;
}

/** Builds mesh, reduced slice and start of a study's store. */
export function soilModel(request: StoreRequest, house: HouseModel): SoilModel {
  const site = storeSite(request, house.floorFilm, house.geometry.floorArea);
  return {
    site,
    slice: keptSlice(site),
    undisturbed: undisturbedCells(site, request),
  };
}

/** An engine over all slices, starting from the undisturbed ground. */
export function freshEngine(model: SoilModel): ReducedEngine {
  const engine = reducedEngine(model.slice, model.site.lengths.length, YEAR_STEPS);
  engine.load(reducedState(model.slice, engine.lanes, model.undisturbed));
  return engine;
}
