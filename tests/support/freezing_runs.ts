/** A winter of house and store on either engine, for comparing one with the other. */
import { sum } from "d3-array";
import { houseModel, initialHouseState, stepHouse, withHeater } from "../../lib/house/mod.ts";
import { balanceResidual } from "../../lib/store/ledger/ledger.ts";
import { type FreezingZone, freezingZones } from "../../lib/store/ground/zones.ts";
import { runYear, startState } from "../../lib/store/seasons/year.ts";
import { undisturbedCells } from "../../lib/store/seasons/soil_model.ts";
import { type StoreRequest, type StoreSite, storeSite } from "../../lib/store/site.ts";
import type { SoilEngine } from "../../lib/store/solver/engine.ts";
import { adiEngine, uniformState } from "../../lib/store/solver/full/engine.ts";
import { type ReducedEngine, reducedEngine } from "../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../lib/store/solver/reduced/reduction.ts";

/** What a winter is run with. */
export interface WinterCase {
  readonly request: StoreRequest;
  readonly steps: readonly number[];
  /** true: short steps in every hour */
  readonly shortSteps: boolean;
  /** W, of the heater */
  readonly heater: number;
}

/** Hourly air and the sums of a winter, kWh. */
export interface Winter {
  readonly air: Float64Array;
  readonly heatIn: number;
  readonly heatOut: number;
  readonly heater: number;
  readonly residual: number;
}

/** 1 October and the hours to 1 May. */
const FROM = 273 * 24;
const HOURS = 212 * 24;

/** Site of a request and the undisturbed ground on 1 October. */
export function winterSite({ request }: WinterCase): { site: StoreSite; start: Float64Array } {
  const house = houseModel(request.houseInputs, request.climate);
  const site = storeSite(request, house.floorFilm, house.geometry.floorArea);
  return { site, start: undisturbedCells(site, request, 273) };
}

/** The fast engine, its water frozen in the given zones. */
export function fastEngine(
  given: WinterCase,
  zonesOf = (zones: readonly FreezingZone[]) => zones,
): ReducedEngine {
  const { site, start } = winterSite(given);
  const zones = zonesOf(freezingZones(site.mesh, site.operator));
  const slice = reduceSlice(site.operator, undefined, zones);
  const engine = reducedEngine(slice, site.lengths.length, given.steps);
  engine.load(reducedState(slice, engine.lanes, start));
  return engine;
}

/** The full model with freezing cell by cell. */
export function fullEngine(given: WinterCase): SoilEngine {
  const { site, start } = winterSite(given);
  const engine = adiEngine(site.operator, site.lengths.length, given.steps, true);
  engine.load(uniformState(engine.lanes, start));
  return engine;
}

/** Runs October to April, or fewer hours. */
export function runWinter(given: WinterCase, engine: SoilEngine, hours = HOURS): Winter {
  const { request } = given;
  const { site } = winterSite(given);
  const house = withHeater(houseModel(request.houseInputs, request.climate), given.heater);
  const air = new Float64Array(8760);
  const ledger = runYear(
    {
      site,
      inputs: request.inputs,
      climate: request.climate,
      wave: request.soil.wave,
      house,
      stepHouse,
      fan: true,
      shortSteps: given.shortSteps,
      from: FROM,
      hours,
    },
    startState(site, engine, initialHouseState(house)),
    (report) => air[report.hour]! += report.house.state.airTemperature * report.seconds / 3600,
  );
  return {
    air,
    heatIn: ledger.heatIn / 3.6e6,
    heatOut: ledger.heatOut / 3.6e6,
    heater: ledger.heater / 3.6e6,
    residual: balanceResidual(ledger),
  };
}

/**
 * K between two winters from December to March: root mean square of 99 % of the hours, and p95. Hours
 * that neither was run through do not count.
 */
export function airDifference(one: Winter, other: Winter): { rms: number; p95: number } {
  const apart: number[] = [];
  one.air.forEach((air, hour) => {
    if (air === 0 && other.air[hour] === 0) return;
    if (hour < 90 * 24 || hour >= 334 * 24) apart.push(Math.abs(air - other.air[hour]!));
  });
  apart.sort((a, b) => a - b);
  const most = apart.slice(0, Math.floor(apart.length * 0.99));
  return {
    rms: Math.sqrt(sum(most, (value) => value ** 2) / most.length),
    p95: apart[Math.floor(apart.length * 0.95)]!,
  };
}
