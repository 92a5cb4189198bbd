/** A log as the stages of the calibration take it: series by hour and by step, and what is held out. @module */
import { HOUR, HOURS_PER_YEAR } from "../../basics/mod.ts";
import { seasonDays } from "../../units/mod.ts";
import { type HourlyHeat, hourlyHeat } from "../flows/hourly_heat.ts";
import { hourlyMeans, localHour } from "../flows/local_hours.ts";
import { HEAT_READINGS, heatReadings, type Reading, readingOf } from "../flows/readings.ts";
import { soundValues } from "../log/channels.ts";
import type { Log, Quantity } from "../log/types.ts";
import type { SeasonSetting } from "../logged_season.ts";

/** Hourly series of a log that some logs have and others not. */
export const HOUSE_SERIES = {
  inside: ["airTemperature", "inside"],
  insideHumidity: ["relativeHumidity", "inside"],
  outside: ["outsideTemperature", undefined],
  outsideHumidity: ["relativeHumidity", "outside"],
  sun: ["globalRadiation", undefined],
  wind: ["windSpeed", undefined],
  store: ["soilTemperature", "store"],
  heater: ["heaterPower", undefined],
  vents: ["ventOpening", undefined],
  curtain: ["curtain", undefined],
} as const satisfies Record<string, readonly [Quantity, string | undefined]>;

/** Name of such a series. */
export type HouseSeries = keyof typeof HOUSE_SERIES;

/** A probe in the ground. */
export interface GroundProbe {
  /** where */
  readonly zone: string;
  /** m below the floor or the ground */
  readonly depth: number;
  /** degC by hour; NaN in gaps */
  readonly values: Float64Array;
}

/** The readings of the air path on the log's own step; NaN in gaps. */
export interface AirPath {
  /** s */
  readonly step: number;
  /** in the order of `HEAT_READINGS` */
  readonly readings: readonly Reading[];
  /** degC between the tubes; not there without a probe */
  readonly store: Float64Array | null;
}

/** A log, ready for the stages. */
export interface LoggedHouse {
  /** s since 1970 UTC of the first hour */
  readonly start: number;
  /** number of hours */
  readonly hours: number;
  /** hour of the 365-day year of each hour of the log; -1 on 29 February */
  readonly hourOfYear: Int32Array;
  /** 1 in hours that no fit may see, else 0 */
  readonly held: Uint8Array;
  /** which those are, in words; null where there are none */
  readonly heldWords: string | null;
  /** SI by hour, temperatures in degC; NaN in gaps; null where it was not logged */
  readonly series: Readonly<Record<HouseSeries, Float64Array | null>>;
  /** standard uncertainty that all values of a series share, in its SI unit */
  readonly uncertainty: Readonly<Record<HouseSeries, number>>;
  /** probes in the ground but those between the tubes */
  readonly ground: readonly GroundProbe[];
  /** heat that the air left in the store by hour; null where it was not logged */
  readonly heat: HourlyHeat | null;
  /** of the errors that the readings of the heat share through the log, in their SI units */
  readonly covariance: readonly (readonly number[])[];
  /** air path by step; null where it was not logged */
  readonly air: AirPath | null;
  /** ppm of carbon dioxide or another tracer inside by step, and its accuracy; null where not logged */
  readonly tracer: { readonly values: Float64Array; readonly accuracy: number } | null;
  /** s of the log's step */
  readonly step: number;
}

function tracerOf(log: Log) {
  const reading = readingOf(log, "carbonDioxide", "inside");
  return reading === null ? null : { values: reading.values, accuracy: reading.uncertainty };
}

/** Which hours are held out. */
function heldHours(hourOfYear: Int32Array, holdOut: string) {
  const days = seasonDays(holdOut);
  const held = Uint8Array.from(hourOfYear, (hour) => hour < 0 ? 0 : days[Math.floor(hour / 24)]!);
  const count = held.reduce((sum, one) => sum + one, 0);
  const some = count > 0 && count < held.length;
  return some
    ? { held, heldWords: holdOut }
    : { held: new Uint8Array(held.length), heldWords: null };
}

/**
 * Series of a log for the stages of the calibration.
 *
 * @param log that starts at a full hour of UTC
 * @param setting place and fan
 * @param holdOut days that no fit may see, as `readSeason` writes them, or `never`
 */
export function loggedHouse(log: Log, setting: SeasonSetting, holdOut: string): LoggedHouse {
  const hours = Math.floor(log.count * log.step / HOUR);
  const hourOfYear = Int32Array.from(
    { length: hours },
    (_, k) => localHour(log.start + k * HOUR, setting.timeZone).hourOfYear ?? -1,
  );
  const found = Object.entries(HOUSE_SERIES).map(([name, [quantity, zone]]) =>
    [name, readingOf(log, quantity, zone)] as const
  );
  const series = Object.fromEntries(
    found.map((
      [name, reading],
    ) => [name, reading === null ? null : hourlyMeans(reading.values, log.step)]),
  ) as LoggedHouse["series"];
  const uncertainty = Object.fromEntries(
    found.map(([name, reading]) => [name, reading?.uncertainty ?? NaN]),
  ) as LoggedHouse["uncertainty"];
  const picked = heatReadings(log);
  const air = "missing" in picked ? null : {
    step: log.step,
    readings: picked.readings,
    store: readingOf(log, "soilTemperature", "store")?.values ?? null,
  };
  return {
    start: log.start,
    hours,
    hourOfYear,
    ...heldHours(hourOfYear, holdOut),
    series,
    uncertainty,
    ground: log.channels
      .filter(({ sensor }) =>
        sensor.quantity === "soilTemperature" && sensor.zone !== "store" &&
        sensor.depth !== undefined
      )
      .map((channel) => ({
        zone: channel.sensor.zone,
        depth: channel.sensor.depth!,
        values: hourlyMeans(soundValues(channel), log.step),
      })),
    heat: air === null ? null : hourlyHeat({
      readings: air.readings,
      step: log.step,
      pressure: setting.pressure,
      fanHeats: setting.fanHeats,
    }),
    covariance: "missing" in picked ? [] : picked.covariance,
    air,
    tracer: tracerOf(log),
    step: log.step,
  };
}

/** Readings of the air path by name. */
export function airReading(air: AirPath, name: typeof HEAT_READINGS[number]): Float64Array {
  return air.readings[HEAT_READINGS.indexOf(name)]!.values;
}

/** Whether an hour's step may be seen by a fit: false in the hours held out. */
export function seenStep({ held, step }: LoggedHouse, place: number): boolean {
  return held[Math.floor(place * step / HOUR)] === 0;
}

/** A series without the hours that are held out: NaN there. */
export function unheld(house: LoggedHouse, values: Float64Array): Float64Array {
  return values.map((value, hour) => house.held[hour] === 0 ? value : NaN);
}

/** The last year of hours at most, for a model that runs through one year. */
export function firstOfYear({ hours }: LoggedHouse): number {
  return Math.max(0, hours - HOURS_PER_YEAR);
}
