/** Days of a log that the store's model is held to. @module */
import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { HOUR, kilowattHours } from "../../basics/mod.ts";
import { PROBES_STAND_FOR } from "../balance.ts";
import { HEAT_READINGS } from "../flows/readings.ts";
import type { LoggedHouse } from "./logged_house.ts";
import type { Replay } from "./replay.ts";

/** Means and sums of one kind by day, as logged, with how they hang on a replay. */
export interface DayKind {
  /** of the days that count, logged */
  readonly logged: readonly number[];
  /** the same hours of a replay */
  readonly of: (replay: Replay) => number[];
  /** what each day moves by for one standard uncertainty of each lasting error of the sensors */
  readonly lasting: readonly (readonly number[])[];
}

/**
 * Share by which the swing of a few probes between the tubes differs from that of the whole store, standard
 * uncertainty; common practice, no source.
 */
const PROBES_SWING = 0.2;

const DAY_HOURS = 24;
/** days of a kind from which on it counts */
const FEWEST_DAYS = 14;
/** least hours of a day that must be there */
const LEAST_HOURS = 18;

/** Hours of each day that count, at least 18 of it, for a series that is there and may be seen. */
function daysOf(
  house: LoggedHouse,
  there: Uint8Array,
  logged: Float64Array,
): number[][] {
  const days: number[][] = [];
  for (let from = 0; from + DAY_HOURS <= house.hours; from += DAY_HOURS) {
    const hours = Array.from({ length: DAY_HOURS }, (_, k) => from + k).filter((hour) =>
      there[hour] === 1 && house.held[hour] === 0 && Number.isFinite(logged[hour]!)
    );
    if (hours.length >= LEAST_HOURS) days.push(hours);
  }
  return days;
}

const mean = (hours: readonly number[], at: (hour: number) => number) =>
  hours.reduce((sum, hour) => sum + at(hour), 0) / hours.length;

function temperatureKind(
  house: LoggedHouse,
  there: Uint8Array,
  name: "inside" | "store",
): DayKind | null {
  const logged = house.series[name];
  if (logged === null) return null;
  const days = daysOf(house, there, logged);
  const own = house.uncertainty[name];
  // what outdoors is off by the house follows; a few probes are not the whole store
  const doubt = Math.hypot(own, name === "inside" ? house.uncertainty.outside : PROBES_STAND_FOR);
  const means = days.map((hours) => mean(hours, (hour) => logged[hour]!));
  const level = means.reduce((sum, one) => sum + one, 0) / Math.max(1, means.length);
  return {
    logged: means,
    of: (replay) =>
      days.map((hours) => mean(hours, (hour) => replay[name][house.hourOfYear[hour]!]!)),
    lasting: [
      days.map(() => doubt),
      ...name === "store" ? [means.map((one) => PROBES_SWING * (one - level))] : [],
    ],
  };
}

/** kWh a day in one direction; the errors of the six readings by their own slopes. */
function heatKind(
  house: LoggedHouse,
  there: Uint8Array,
  name: "heatIn" | "heatOut",
): DayKind | null {
  const { heat, covariance } = house;
  if (heat === null) return null;
  const logged = heat.flows[name];
  const days = daysOf(house, there, logged);
  const energy = (hours: readonly number[], at: (hour: number) => number) =>
    kilowattHours(HOUR * DAY_HOURS * mean(hours, at));
  const roots = new CholeskyDecomposition(new Matrix(covariance.map((row) => [...row])));
  const lower = roots.lowerTriangularMatrix;
  return {
    logged: days.map((hours) => energy(hours, (hour) => logged[hour]!)),
    of: (replay) =>
      days.map((hours) => energy(hours, (hour) => replay[name][house.hourOfYear[hour]!]!)),
    lasting: HEAT_READINGS.map((_, error) =>
      days.map((hours) =>
        energy(hours, (hour) =>
          HEAT_READINGS.reduce(
            (sum, _, reading) =>
              sum + lower.get(reading, error) *
                heat.slopes[name][hour * HEAT_READINGS.length + reading]!,
            0,
          ))
      )
    ),
  };
}

/** Days of a log that a model is held to. */
export interface DayData {
  readonly kinds: readonly DayKind[];
}

/**
 * Means of house and store and the heat of each day that a fit may see.
 *
 * @param house log
 * @param there 1 in hours whose weather was logged
 */
export function dayData(house: LoggedHouse, there: Uint8Array): DayData {
  const kinds = [
    temperatureKind(house, there, "inside"),
    temperatureKind(house, there, "store"),
    heatKind(house, there, "heatIn"),
    heatKind(house, there, "heatOut"),
  ];
  return {
    kinds: kinds.filter((kind): kind is DayKind =>
      kind !== null && kind.logged.length > FEWEST_DAYS
    ),
  };
}

/** Computed less logged, kind after kind, day after day. */
export type DayMisses = readonly (readonly number[])[];

/**
 * What a replay says otherwise than the log.
 *
 * @param data days of the log
 * @param replay of the same weather
 */
export function dayMisses({ kinds }: DayData, replay: Replay): DayMisses {
  return kinds.map((kind) => kind.of(replay).map((value, day) => value - kind.logged[day]!));
}
