/** The plan's own year beside the log, hour by hour. @module */
import { HOUR, kilowattHours } from "../basics/mod.ts";
import { agreement, AGREEMENT_LIMITS } from "./fit/agreement.ts";
import { localHour } from "./flows/local_hours.ts";
import { HEAT_READINGS } from "./flows/readings.ts";
import { type Banded, banded } from "./flows/sums.ts";
import type { LoggedSeason } from "./logged_season.ts";
import type { PlanAgreement, PlanBesideLog, PlannedAndMeasured } from "./types.ts";
import { propagate } from "./uncertainty/propagate.ts";

/** The plan's year, 8760 hours each. */
export interface PlannedYear {
  /** W put in while charging, sensible and latent */
  readonly heatIn: Float64Array;
  /** W given back while discharging */
  readonly heatOut: Float64Array;
  /** W electric */
  readonly fanPower: Float64Array;
  /** share of the hour the fan ran, either way, 0 to 1 */
  readonly running: Float64Array;
  /** degC */
  readonly inside: Float64Array;
  /** degC between the tubes */
  readonly store: Float64Array;
  /** degC */
  readonly outside: Float64Array;
  /** m³/s of the fans at their operating point */
  readonly airFlow: number;
}

/** Parameters taken off the count, as in the edition of 2002. */
const PARAMETERS = 1;
const COUNT = HEAT_READINGS.length;

/** An hour that both have. */
interface SharedHour {
  readonly place: number;
  readonly hourOfYear: number;
  readonly day: string;
}

function sharedHours({ start, timeZone, heat }: LoggedSeason): SharedHour[] {
  return Array.from(heat.running, (_, place) => {
    const { hourOfYear, day } = localHour(start + place * HOUR, timeZone);
    return { place, hourOfYear: hourOfYear ?? -1, day };
  }).filter(({ place, hourOfYear }) => hourOfYear >= 0 && !Number.isNaN(heat.flows.heatIn[place]!));
}

/** Heat moved by groups of hours, measured with its slopes, and planned; kWh. */
function movedBy(
  groups: readonly (readonly SharedHour[])[],
  { heat }: LoggedSeason,
  plan: PlannedYear,
) {
  return groups.map((hours) => {
    let [measured, planned] = [0, 0];
    const slopes = new Array<number>(COUNT).fill(0);
    for (const { place, hourOfYear } of hours) {
      measured += heat.flows.heatIn[place]! + heat.flows.heatOut[place]!;
      planned += plan.heatIn[hourOfYear]! + plan.heatOut[hourOfYear]!;
      for (let k = 0; k < COUNT; k++) {
        const at = place * COUNT + k;
        slopes[k]! += heat.slopes.heatIn[at]! + heat.slopes.heatOut[at]!;
      }
    }
    const energy = (power: number) => kilowattHours(power * HOUR);
    return { measured: energy(measured), planned: energy(planned), slopes: slopes.map(energy) };
  });
}

/** Null where nothing was moved or there are too few groups. */
function agreementOf(
  groups: readonly (readonly SharedHour[])[],
  season: LoggedSeason,
  plan: PlannedYear,
): PlanAgreement | null {
  const moved = movedBy(groups, season, plan);
  if (moved.length < 3 || !moved.some(({ measured }) => measured > 0)) return null;
  const planned = moved.map((one) => one.planned);
  const at = (errors: readonly number[]) =>
    agreement(
      moved.map(({ measured, slopes }) =>
        slopes.reduce((sum, slope, k) => sum + slope * errors[k]!, measured)
      ),
      planned,
      PARAMETERS,
    );
  const values = new Array<number>(COUNT).fill(0);
  const found = propagate({ values, covariance: season.covariance }, (errors) => {
    const { nmbe, cvRmse } = at(errors);
    return [nmbe, cvRmse];
  });
  const [nmbe, cvRmse] = [banded(found, 0), banded(found, 1)];
  const best = at(values);
  return {
    ...best,
    nmbeRange: [nmbe.low, nmbe.high],
    cvRmseRange: [Math.max(0, cvRmse.low), cvRmse.high],
    count: moved.length,
    within: Math.abs(best.nmbe) <= AGREEMENT_LIMITS.hourly.nmbe &&
      best.cvRmse <= AGREEMENT_LIMITS.hourly.cvRmse,
  };
}

function row(
  name: string,
  kind: PlannedAndMeasured["kind"],
  planned: number,
  measured: Banded,
): PlannedAndMeasured[] {
  if (!Number.isFinite(planned) || !Number.isFinite(measured.value)) return [];
  return [{
    name,
    kind,
    planned,
    measured,
    apart: planned < measured.low || planned > measured.high,
  }];
}

/** A value with two standard uncertainties to either side, near enough 95 %. */
const around = (value: number, uncertainty: number): Banded => ({
  value,
  low: value - 1.96 * uncertainty,
  high: value + 1.96 * uncertainty,
});

function meanOver(hours: readonly number[], of: (hour: number) => number): number {
  const there = hours.map(of).filter(Number.isFinite);
  return there.length === 0 ? NaN : there.reduce((sum, one) => sum + one, 0) / there.length;
}

function rowsOf(
  season: LoggedSeason,
  plan: PlannedYear,
  hours: readonly SharedHour[],
): PlannedAndMeasured[] {
  const { sums, heat, covariance } = season;
  const places = hours.map(({ place }) => place);
  const hourOf = new Map(hours.map(({ place, hourOfYear }) => [place, hourOfYear]));
  const total = (series: Float64Array) =>
    kilowattHours(HOUR * hours.reduce((sum, { hourOfYear }) => sum + series[hourOfYear]!, 0));
  const ran = places.filter((place) => heat.running[place]! > 0.99);
  const flow = meanOver(ran, (place) => heat.flows.airFlow[place]!);
  const power = meanOver(ran, (place) => heat.flows.fanPower[place]!);
  const plannedOn = hours.filter(({ hourOfYear }) => plan.running[hourOfYear]! > 0.99);
  const plannedPower = meanOver(
    plannedOn.map(({ hourOfYear }) => hourOfYear),
    (hour) => plan.fanPower[hour]!,
  );
  const pair = (logged: Float64Array, planned: Float64Array) => {
    const both = places.filter((place) => Number.isFinite(logged[place]!));
    return [
      meanOver(both, (place) => planned[hourOf.get(place)!]!),
      meanOver(both, (place) => logged[place]!),
    ] as const;
  };
  const [plannedInside, inside] = pair(season.inside, plan.inside);
  const [plannedStore, store] = pair(season.store, plan.store);
  return [
    ...row(
      "air flow while the fan runs",
      "airFlow",
      plan.airFlow,
      around(
        flow,
        Math.sqrt(covariance[4]![4]!),
      ),
    ),
    ...row(
      "fan power while it runs",
      "power",
      plannedPower,
      around(
        power,
        Math.sqrt(covariance[5]![5]!),
      ),
    ),
    ...row("heat put in", "energy", total(plan.heatIn), sums.heatIn),
    ...row("heat given back", "energy", total(plan.heatOut), sums.heatOut),
    ...row("electricity of the fans", "energy", total(plan.fanPower), sums.fanEnergy),
    ...row(
      "air inside, mean",
      "temperature",
      plannedInside,
      around(inside, season.insideUncertainty),
    ),
    ...row(
      "soil between the tubes, mean",
      "temperature",
      plannedStore,
      around(store, season.storeUncertainty),
    ),
  ];
}

/**
 * Sets the plan's year beside the log, over the hours that were logged. The plan is the study as
 * it stands: nothing is fitted.
 *
 * @returns null where too few hours are shared or the air moved nothing
 */
export function planBesideLog(season: LoggedSeason, plan: PlannedYear): PlanBesideLog | null {
  const hours = sharedHours(season);
  const byDay = new Map<string, SharedHour[]>();
  for (const hour of hours) byDay.set(hour.day, [...byDay.get(hour.day) ?? [], hour]);
  const whole = [...byDay.values()].filter((day) => day.length === 24);
  const hourly = agreementOf(hours.map((hour) => [hour]), season, plan);
  const daily = agreementOf(whole, season, plan);
  if (hourly === null || daily === null) return null;
  const apart = hours.map(({ place, hourOfYear }) =>
    season.outside[place]! - plan.outside[hourOfYear]!
  ).filter(Number.isFinite);
  return {
    hourly,
    daily,
    rows: rowsOf(season, plan, hours),
    days: [...byDay].map(([day, of]) => {
      const energy = (series: Float64Array) =>
        kilowattHours(HOUR * of.reduce((sum, { hourOfYear }) => sum + series[hourOfYear]!, 0));
      return { day, heatIn: energy(plan.heatIn), heatOut: energy(plan.heatOut) };
    }),
    weatherApart: apart.length === 0
      ? null
      : apart.reduce((sum, one) => sum + Math.abs(one), 0) / apart.length,
  };
}
