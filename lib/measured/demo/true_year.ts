/** The year of a house as it was built, in intervals as short as a logger's. @module */
import { moistVolume } from "../../air/mod.ts";
import { HOUR, HOURS_PER_YEAR } from "../../basics/mod.ts";
import { houseModel, initialHouseState, withHeater } from "../../house/mod.ts";
import { leakageRate } from "../../house/skin/leakage.ts";
import { undisturbedTemperature } from "../../soil/mod.ts";
import { baselineRequest, baselineYear } from "../../store/baseline.ts";
import type { StoreRequest } from "../../store/mod.ts";
import { JUMPS_FROM_AFAR, settledSetting } from "../../store/seasons/settled_year.ts";
import { freshEngine, soilModel } from "../../store/seasons/soil_model.ts";
import { periodicYear } from "../../store/seasons/spin_up.ts";
import { startState } from "../../store/seasons/year.ts";
import type { StepReport } from "../../store/step_report.ts";

/** s, interval of the true year; divides the hour */
export const TRUE_STEP = 900;
const PER_HOUR = HOUR / TRUE_STEP;

/** Where a probe lies in the ground below the house. */
export interface ProbePlace {
  /** share of the way along the tubes from their intake, 0 to 1 */
  readonly along: number;
  /** m from the middle of the house across the tubes */
  readonly across: number;
  /** m below the floor */
  readonly depth: number;
  /** h from one look to the next, between which its course is straight; looking costs time */
  readonly every: number;
}

/** Means of each interval of `TRUE_STEP`, of a whole year. */
export interface TrueYear {
  /** degC in the house */
  readonly air: Float64Array;
  /** kg/kg in the house */
  readonly ratio: Float64Array;
  /** degC at the intake; of the house where the fan rests */
  readonly intake: Float64Array;
  /** degC at the outlet; on its way to between store and house where the fan rests */
  readonly outlet: Float64Array;
  /** kg/kg at the outlet; of the house where the fan rests */
  readonly outletRatio: Float64Array;
  /** m³/s at the intake, at the air's state there */
  readonly airFlow: Float64Array;
  /** W electric */
  readonly fanPower: Float64Array;
  /** W from the air into the tubes' walls, sensible and latent */
  readonly heat: Float64Array;
  /** the latent part of it, W */
  readonly latent: Float64Array;
  /** air changes by leakage and opened vents, 1/h */
  readonly airChange: Float64Array;
  /** share that the vents stand open, 0 to 1 */
  readonly vents: Float64Array;
  /** W lost through skin and cracks, vents left out */
  readonly loss: Float64Array;
  /** degC of each probe in the ground, at the full hours of the time they are looked at */
  readonly probes: readonly Float64Array[];
  /** degC of the same house with the fan always off, by hour */
  readonly control: Float64Array;
  /** degC of undisturbed ground, by hour, for each depth asked for */
  readonly garden: readonly Float64Array[];
  /** Pa, by hour */
  readonly pressure: Float64Array;
}

/** Which probes stand in the ground. */
export interface TrueProbes {
  /** below the house */
  readonly house: readonly ProbePlace[];
  /** m, depths in undisturbed ground */
  readonly garden: readonly number[];
  /** hour of the year from which on the probes in the ground are looked at */
  readonly fromHour: number;
  /** number of hours for which they are; NaN in all others */
  readonly hours: number;
}

/** Index of the value nearest to a place. */
function nearest(values: ArrayLike<number>, place: number): number {
  let best = 0;
  for (let k = 1; k < values.length; k++) {
    if (Math.abs(values[k]! - place) < Math.abs(values[best]! - place)) best = k;
  }
  return best;
}

/**
 * Runs the house to the year that repeats, and gives that year as loggers without any error would
 * see it.
 *
 * @param request of the house as built
 * @param places of the probes
 */
export function trueYear(request: StoreRequest, places: TrueProbes): TrueYear {
  const house = withHeater(houseModel(request.houseInputs, request.climate), 0);
  const model = soilModel(request, house);
  const engine = freshEngine(model);
  const { mesh, slices } = model.site;
  const cellOf = places.house.map(({ along, across, depth, every }) => ({
    every,
    lane: Math.min(slices - 1, Math.floor(along * slices)),
    cell: nearest(mesh.depths, depth) * mesh.columns +
      nearest(mesh.x, mesh.half ? Math.abs(across) : across),
  }));
  const series = () => new Float64Array(HOURS_PER_YEAR * PER_HOUR);
  const year = {
    air: series(),
    ratio: series(),
    intake: series(),
    outlet: series(),
    outletRatio: series(),
    airFlow: series(),
    fanPower: series(),
    heat: series(),
    latent: series(),
    airChange: series(),
    vents: series(),
    loss: series(),
    probes: places.house.map(() => new Float64Array(HOURS_PER_YEAR).fill(NaN)),
  };
  const spread = (target: Float64Array, value: number, from: number, seconds: number) => {
    for (let at = from; at < from + seconds - 1e-6;) {
      const bin = Math.floor((at + 1e-6) / TRUE_STEP);
      const part = Math.min((bin + 1) * TRUE_STEP, from + seconds) - at;
      target[bin]! += value * part / TRUE_STEP;
      at += part;
    }
  };
  let now = 0;
  let lastOutlet = 15;
  const listen = (report: StepReport) => {
    const start = report.hour * HOUR;
    if (now < start || now >= start + HOUR) now = start;
    if (now === start) {
      const lanes = new Map<number, Float64Array>();
      const since = (report.hour - places.fromHour + HOURS_PER_YEAR) % HOURS_PER_YEAR;
      cellOf.forEach(({ lane, cell, every }, k) => {
        if (since > places.hours || since % every !== 0) return;
        const cells = lanes.get(lane) ?? engine.cells(lane);
        lanes.set(lane, cells);
        year.probes[k]![report.hour] = cells[cell]!;
      });
    }
    const seen = seenByProbes(report, request.climate.pressure[report.hour]!, lastOutlet);
    lastOutlet = seen.outlet;
    for (const [name, value] of Object.entries(seen)) {
      spread(year[name as keyof typeof seen], value, now, report.seconds);
    }
    for (const [name, value] of Object.entries(lostBy(request, report))) {
      spread(year[name as "airChange" | "vents" | "loss"], value, now, report.seconds);
    }
    now += report.seconds;
  };
  periodicYear({
    setting: settledSetting({ request, model, house, fan: true }),
    state: startState(model.site, engine, initialHouseState(house)),
    engine,
    jumps: JUMPS_FROM_AFAR,
    listen,
  });
  const bare = baselineRequest(request);
  const control = baselineYear(bare, soilModel(bare, house), house);
  year.probes.forEach((series, k) => straighten(series, cellOf[k]!.every));
  return {
    ...year,
    control: control.year.airTemperature,
    garden: places.garden.map((depth) =>
      Float64Array.from(
        { length: HOURS_PER_YEAR },
        (_, hour) => undisturbedTemperature(request.soil.wave, depth, hour / 24),
      )
    ),
    pressure: request.climate.pressure,
  };
}

/** Air that changes and heat that is lost in a step. */
function lostBy({ houseInputs, climate }: StoreRequest, { house, hour }: StepReport) {
  const { airTemperature, ventOpening } = house.mean;
  const difference = airTemperature - climate.dryBulb[hour]!;
  const { glazing, opaque, leakage } = house.flows;
  return {
    airChange: leakageRate(houseInputs, difference, climate.windSpeed[hour]!) +
      ventOpening * houseInputs.ventCapacity,
    vents: ventOpening,
    loss: -(glazing + opaque + leakage),
  };
}

/** Fills the hours between looks with a straight course. */
function straighten(series: Float64Array, every: number): void {
  const at = (hour: number) => series[hour % HOURS_PER_YEAR]!;
  for (let hour = 0; hour < HOURS_PER_YEAR; hour++) {
    if (Number.isNaN(series[hour]!) || Number.isNaN(at(hour + every)) || every === 1) continue;
    const [from, to] = [at(hour), at(hour + every)];
    for (let k = 1; k < every; k++) {
      series[(hour + k) % HOURS_PER_YEAR] = from + (to - from) * k / every;
    }
    hour += every - 1;
  }
}

/** s in which still air in the duct takes most of the way to rest; common practice, no source. */
const DUCT_TIME = 3600;

/** What probes in the air see of one step. */
function seenByProbes(report: StepReport, pressure: number, lastOutlet: number) {
  const { airTemperature: air, humidityRatio: ratio } = report.house.mean;
  if (report.air === null) {
    // still air in the duct comes to rest between house and store
    const rest = (air + report.store) / 2;
    const outlet = rest + (lastOutlet - rest) * Math.exp(-report.seconds / DUCT_TIME);
    return {
      air,
      ratio,
      intake: air,
      outlet,
      outletRatio: ratio,
      airFlow: 0,
      fanPower: 0,
      heat: 0,
      latent: 0,
    };
  }
  const { airRate } = report.air;
  return {
    air,
    ratio,
    intake: report.intake,
    outlet: report.outlet,
    outletRatio: ratio + report.vapour / airRate,
    airFlow: airRate * moistVolume(report.intake, ratio, pressure),
    fanPower: report.fanPower,
    heat: report.sensible + report.latent,
    latent: report.latent,
  };
}
