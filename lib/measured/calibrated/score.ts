/** How well a replay meets the log, on the hours that a fit has seen and on those it has not. @module */
import { agreementOn, missesOn, type Sides } from "../calibration/hold_out.ts";
import { localHour } from "../flows/local_hours.ts";
import { HOUR } from "../../basics/mod.ts";
import type { LoggedHouse } from "./logged_house.ts";
import type { Replay } from "./replay.ts";
import { hourEnergy } from "./stages.ts";
import type { HeldOutScore, ReplayedDay } from "./types.ts";

/** W/m² of sun below which it is night */
const DARK = 2;
const DAY_HOURS = 24;

/** Log and replay by hour of the log; NaN where either is missing. */
function beside(
  house: LoggedHouse,
  there: Uint8Array,
  logged: (hour: number) => number,
  replayed: (ofYear: number) => number,
) {
  const counts = (hour: number) => there[hour] === 1 && Number.isFinite(logged(hour));
  const make = (value: (hour: number) => number) =>
    Float64Array.from({ length: house.hours }, (_, hour) => counts(hour) ? value(hour) : NaN);
  return {
    measured: make(logged),
    computed: make((hour) => replayed(house.hourOfYear[hour]!)),
  };
}

/** kWh moved by the air in each hour, logged and replayed. */
function heatMoved(house: LoggedHouse, there: Uint8Array, replay: Replay) {
  const { heatIn, heatOut } = house.heat!.flows;
  return beside(
    house,
    there,
    (hour) => hourEnergy(heatIn[hour]! + heatOut[hour]!),
    (ofYear) => hourEnergy(replay.heatIn[ofYear]! + replay.heatOut[ofYear]!),
  );
}

/** Sums of whole days; NaN for a day of which less than half is there. */
function byDay(series: Float64Array): Float64Array {
  return Float64Array.from({ length: Math.floor(series.length / DAY_HOURS) }, (_, day) => {
    const hours = series.subarray(day * DAY_HOURS, (day + 1) * DAY_HOURS).filter(Number.isFinite);
    return 2 * hours.length < DAY_HOURS ? NaN : hours.reduce((sum, one) => sum + one, 0);
  });
}

/** A day counts as held out where any of its hours is. */
function heldDays(held: Uint8Array): Uint8Array {
  return Uint8Array.from(
    { length: Math.floor(held.length / DAY_HOURS) },
    (_, day) => held.subarray(day * DAY_HOURS, (day + 1) * DAY_HOURS).includes(1) ? 1 : 0,
  );
}

/**
 * Scores of a replay.
 *
 * @param name of it
 * @param house log with the heat of the store
 * @param there 1 in hours whose weather was logged
 * @param replay model of the same hours
 * @param parameters a whole number that was fitted, taken off the count on the fitted side
 * @throws InputError where too few hours are there on either side
 */
export function heldOutScore(
  name: string,
  { house, there, replay, parameters }: {
    readonly house: LoggedHouse;
    readonly there: Uint8Array;
    readonly replay: Replay;
    readonly parameters: number;
  },
): HeldOutScore {
  const { measured, computed } = heatMoved(house, there, replay);
  const options = { parameters, per: "hourly" } as const;
  const temperature = (
    series: "inside" | "store",
  ): Sides<ReturnType<typeof missesOn>["fitted"]> | null => {
    const logged = house.series[series];
    if (logged === null) return null;
    const both = beside(house, there, (hour) => logged[hour]!, (ofYear) => replay[series][ofYear]!);
    return missesOn(both.measured, both.computed, house.held);
  };
  return {
    name,
    parameters,
    heat: agreementOn(measured, computed, house.held, options),
    heatByDay: agreementOn(byDay(measured), byDay(computed), heldDays(house.held), options),
    inside: temperature("inside"),
    store: temperature("store"),
  };
}

/** Heat moved day by day, logged, planned and fitted, in the hours that all three have. */
export function replayedDays(
  house: LoggedHouse,
  there: Uint8Array,
  { planned, fitted, timeZone }: {
    readonly planned: Replay;
    readonly fitted: Replay;
    readonly timeZone: number;
  },
): ReplayedDay[] {
  const [one, other] = [heatMoved(house, there, planned), heatMoved(house, there, fitted)];
  const [measured, before, after] = [one.measured, one.computed, other.computed].map(byDay) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const held = heldDays(house.held);
  return Array.from(measured, (value, day): ReplayedDay => ({
    day: localHour(house.start + (day * DAY_HOURS + DAY_HOURS / 2) * HOUR, timeZone).day,
    held: held[day] === 1,
    measured: value,
    planned: before[day]!,
    fitted: after[day]!,
  })).filter(({ measured }) => Number.isFinite(measured));
}

/** K, logged less computed house air of dark hours that are held out. */
export function nightResiduals(house: LoggedHouse, there: Uint8Array, replay: Replay): number[] {
  const { inside, sun } = house.series;
  if (inside === null) return [];
  return Array.from(inside, (value, hour) => {
    const dark = sun === null || sun[hour]! < DARK;
    return there[hour] === 1 && house.held[hour] === 1 && dark
      ? value - replay.inside[house.hourOfYear[hour]!]!
      : NaN;
  }).filter(Number.isFinite);
}
