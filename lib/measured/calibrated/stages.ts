/** The stages of the calibration that a log allows, one after the other. @module */
import { HOUR, InputError, KILOWATT_HOUR } from "../../basics/mod.ts";
import { fanSpeedOf, flowFromMeter } from "../calibration/air_flow.ts";
import type { Estimate, Stage } from "../calibration/estimate.ts";
import { leakageLaw } from "../calibration/leakage_law.ts";
import { conductivityOf } from "../calibration/soil_pair.ts";
import { soilHeatEquation } from "../calibration/soil_heat_equation.ts";
import { tubeFilm } from "../calibration/tube_film.ts";
import { airReading, type LoggedHouse, seenStep, unheld } from "./logged_house.ts";
import { leafStage } from "./leaf_stage.ts";
import { nightStage } from "./night_stage.ts";
import { tracerNights } from "./tracer_nights.ts";
import type { StageRow } from "./types.ts";
import type { StagesQuestion } from "./stages_question.ts";

/** Hours in a day. */
const DAY_HOURS = 24;

/** A stage, or the reason why these logs do not allow it. */
function attempt(name: string, missing: string | null, stage: () => Stage): StageRow {
  if (missing !== null) return { name, stage: null, reason: missing };
  try {
    return { name, stage: stage(), reason: null };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { name, stage: null, reason: error.message };
  }
}

const wanting = (parts: Readonly<Record<string, unknown>>): string | null => {
  const missing = Object.entries(parts).filter(([, one]) => one === null || one === false)
    .map(([words]) => words);
  return missing.length === 0 ? null : `the logs hold no ${missing.join(", no ")}`;
};

function leakageStage({ house }: StagesQuestion): StageRow {
  const { inside, outside } = house.series;
  const missing = wanting({
    "tracer (carbon dioxide inside, after a dose on dark nights with shut vents)": house.tracer,
    "air temperature inside": inside,
    "outdoor temperature": outside,
  });
  return attempt(
    "leakage by tracer decay",
    missing,
    () => leakageLaw(tracerNights(house), house.uncertainty.wind || 0),
  );
}

function flowStage({ house, setting }: StagesQuestion): StageRow {
  const { air } = house;
  return attempt(
    "air flow",
    wanting({ "air path (temperatures, humidities, air flow, fan power)": air }),
    () => {
      const flow = airReading(air!, "airFlow");
      const running = runningSteps(house);
      const flows = running.map((place) => flow[place]!);
      const [warm, cold] = [
        airReading(air!, "intakeTemperature"),
        airReading(air!, "outletTemperature"),
      ];
      const charging = running.filter((place) => warm[place]! > cold[place]!).length;
      const { charge, discharge } = setting.plannedFlow;
      const planned = (charge * charging + discharge * (running.length - charging)) /
        running.length;
      const reading = air!.readings[4]!;
      const mean = flows.reduce((sum, one) => sum + one, 0) / flows.length;
      return fanSpeedOf(
        flowFromMeter({ flows, meterDoubt: reading.uncertainty / mean }),
        planned,
        setting.fanSpeed,
      );
    },
  );
}

/** share of the fan's usual power from which on a step counts as running from end to end */
const FULL_POWER = 0.9;

/** Steps that may be seen in which the fan runs, with all readings, and in the steps beside them too. */
function runningSteps(house: LoggedHouse): number[] {
  const air = house.air!;
  const power = airReading(air, "fanPower");
  const most = power.reduce((high, one) => one > high ? one : high, 0);
  const on = power.filter((one) => one > most / 2).sort();
  const usual = on[Math.floor(on.length / 2)] ?? Infinity;
  const full = (place: number) => power[place]! > FULL_POWER * usual;
  return Array.from(power, (_, place) => place).filter((place) =>
    full(place - 1) && full(place) && full(place + 1) && seenStep(house, place) &&
    air.readings.every(({ values }) => Number.isFinite(values[place]!))
  );
}

/** Zones of probes in ground that no tube warms. */
const NEAR_TUBES = /store|tube|floor/;

function soilStage({ house, setting }: StagesQuestion): StageRow {
  const zones = [...new Set(house.ground.map(({ zone }) => zone))]
    .filter((zone) => !NEAR_TUBES.test(zone));
  const profiles = zones.map((zone) =>
    house.ground.filter((probe) => probe.zone === zone).sort((a, b) => a.depth - b.depth)
  );
  const profile = profiles.find((probes) => probes.length >= 3);
  return attempt(
    "soil diffusivity by depth",
    profile === undefined
      ? "the logs hold no three soil probes at different depths in one place away from the tubes"
      : null,
    () => {
      const seen = profile!.map(({ values }, k) =>
        // the ends drive the column, as the weather does; what is compared must not be held out
        dailyMeans(k === 0 || k === profile!.length - 1 ? values : unheld(house, values))
      );
      const stage = soilHeatEquation({
        seconds: Float64Array.from(seen[0]!, (_, day) => (day + 0.5) * DAY_HOURS * HOUR),
        depths: profile!.map(({ depth }) => depth),
        temperatures: seen,
        ownLevels: true,
      });
      const [diffusivity] = stage.estimates;
      const conductivity = conductivityOf(diffusivity!, setting.heatCapacity);
      const { errors: _errors, biases: _biases, error: _error, ...plain } = stage;
      return {
        ...plain,
        estimates: [diffusivity!, conductivity],
        correlation: [[1, 1], [1, 1]],
      };
    },
  );
}

/** Means of whole days; NaN where less than half of one is there. */
function dailyMeans(hourly: Float64Array): Float64Array {
  return Float64Array.from({ length: Math.floor(hourly.length / DAY_HOURS) }, (_, day) => {
    const there = hourly.subarray(day * DAY_HOURS, (day + 1) * DAY_HOURS).filter(Number.isFinite);
    return 2 * there.length < DAY_HOURS
      ? NaN
      : there.reduce((sum, one) => sum + one, 0) / there.length;
  });
}

function tubesStage({ house, setting }: StagesQuestion): StageRow {
  const { air } = house;
  const missing = wanting({
    "air path (temperatures, humidities, air flow, fan power)": air,
    'soil temperature in the zone "store"': air?.store ?? null,
  });
  return attempt("film and wetness of the tubes", missing, () => {
    const running = new Set(runningSteps(house));
    const flow = airReading(air!, "airFlow");
    const reading = air!.readings[4]!;
    const there = flow.filter((one, place) => one > 0 && running.has(place));
    const mean = there.reduce((sum, one) => sum + one, 0) / Math.max(1, there.length);
    return tubeFilm({
      intake: airReading(air!, "intakeTemperature"),
      intakeHumidity: airReading(air!, "intakeHumidity"),
      outlet: airReading(air!, "outletTemperature"),
      outletHumidity: airReading(air!, "outletHumidity"),
      wall: air!.store!,
      airFlow: flow.map((one, place) => running.has(place) ? one : 0),
      pressure: setting.pressure,
      flowDoubt: reading.uncertainty / mean,
    });
  });
}

/** The first estimate of a stage, by name; undefined where there is none. */
function estimateNamed(row: StageRow, name: string): Estimate | undefined {
  return row.stage?.estimates.find((one) => one.name === name);
}

/**
 * All stages in the order in which a builder would take them: leakage, loss by quiet nights (with the
 * edge of the floor), air flow, soil, tubes, leaf area. Hours held out enter none of them.
 *
 * @param question log and study
 */
export function calibrationStages(question: StagesQuestion): StageRow[] {
  const leakage = leakageStage(question);
  const soil = soilStage(question);
  const { conductivity } = question.setting;
  const found = estimateNamed(soil, "soil conductivity")?.value ?? conductivity;
  const calm = estimateNamed(leakage, "leakage in calm air")?.value;
  const wind = estimateNamed(leakage, "leakage by wind")?.value;
  const { inputs } = question;
  const leaking = {
    leakage: calm ?? inputs.leakage,
    leakageWind: wind ?? (calm === undefined ? inputs.leakageWind : 0),
  };
  return [
    leakage,
    attempt(
      "loss of the house by quiet nights, with the floor's edge",
      wanting({
        "air temperature inside": question.house.series.inside,
        "outdoor temperature": question.house.series.outside,
        "global radiation": question.house.series.sun,
      }),
      () => nightStage(question, found),
    ),
    flowStage(question),
    soil,
    tubesStage(question),
    attempt(
      "leaf area by the water of the house",
      wanting({
        "air temperature inside": question.house.series.inside,
        "relative humidity inside": question.house.series.insideHumidity,
        "outdoor temperature": question.house.series.outside,
        "relative humidity outside": question.house.series.outsideHumidity,
        "global radiation": question.house.series.sun,
      }),
      () => leafStage(question, leaking),
    ),
  ];
}

/** kWh of a mean power over an hour. */
export const hourEnergy = (power: number): number => power * HOUR / KILOWATT_HOUR;
