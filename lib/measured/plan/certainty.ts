/** What each sensor adds in certainty: bands of heat, COP and calibration with and without it. @module */
import { humidityRatioFromRelativeHumidity, relativeHumidityFromRatio } from "../../air/mod.ts";
import type { StoreYear } from "../../store/types.ts";
import { hourlyHeat } from "../flows/hourly_heat.ts";
import { HEAT_READINGS, type Reading, SHARED_ERROR } from "../flows/readings.ts";
import { type HeatSums, heatSums } from "../flows/sums.ts";
import { estimates, propagate } from "../uncertainty/propagate.ts";
import { findSensorKind, type SensorKind } from "./sensor_kinds.ts";

/** What the bands are worked out from. */
export interface CertaintyRequest {
  /** the study's year */
  readonly year:
    & Pick<
      StoreYear,
      | "intakeTemperature"
      | "outletTemperature"
      | "airRate"
      | "fanPower"
      | "fanShare"
      | "condensate"
    >
    & { readonly house: Pick<StoreYear["house"], "airTemperature" | "relativeHumidity" | "solar"> };
  /** degC outdoors by hour */
  readonly outside: Float64Array;
  /** Pa */
  readonly pressure: number;
  /** m³/s of the fans while they charge, and while they discharge */
  readonly airFlow: { readonly charge: number; readonly discharge: number };
  /** K, amplitude of the yearly wave at the surface, and m²/s, diffusivity of the ground */
  readonly ground: { readonly amplitude: number; readonly diffusivity: number };
}

/** Half widths of 95 % bands, as shares of the value. */
export interface CertaintyRow {
  /** which sensors are there */
  readonly name: string;
  /** share of the heat put in */
  readonly heatIn: number;
  /** share of the heat given back */
  readonly heatOut: number;
  /** share of the COP, heat given back over fan energy */
  readonly cop: number;
}

/** How surely a fitted value would be known. */
export interface CalibrationRow {
  /** what is fitted */
  readonly name: string;
  /** which sensors it stands on */
  readonly sensors: string;
  /** half width of the 95 % band as a share of the value, with all sensors */
  readonly withAll: number;
  /** the same by sensor left out */
  readonly without: readonly { readonly name: string; readonly half: number }[];
}

/** Certainty that the sensors of a plan give. */
export interface PlanCertainty {
  /** all sensors first, then each left out */
  readonly heat: readonly CertaintyRow[];
  /** fitted values */
  readonly calibration: readonly CalibrationRow[];
  /** sums of the year that the bands are of */
  readonly sums: HeatSums;
}

const NORMAL_95 = 1.959963985;

/** Kinds of the readings, in their order. */
const KINDS = [
  "air-temperature",
  "humidity",
  "air-temperature",
  "humidity",
  "air-flow",
  "fan-power",
].map(findSensorKind);

const NAMES = [
  "intake temperature",
  "intake humidity",
  "outlet temperature",
  "outlet humidity",
  "air flow meter",
  "fan energy meter",
];

/**
 * Bands of the year's heat and COP with all sensors, and with each of them left out and its value
 * taken from what one knows without it (data/sensors), by the law of propagation (GUM [gum-2008]
 * 5.2.2). A sensor that is off is off all year, so errors do not average out; the two temperatures
 * share the error of their bath, the two humidities that of their salt.
 *
 * @param request the study's year
 */
export function planCertainty(request: CertaintyRequest): PlanCertainty {
  const readings = yearReadings(request);
  const heat = hourlyHeat({ readings, step: 3600, pressure: request.pressure, fanHeats: false });
  const hours = Array.from(heat.running, (_, hour) => hour);
  const typical = KINDS.map((_, k) => meanWhileRunning(readings[k]!.values, heat.running));
  const sumsOf = (covariance: readonly (readonly number[])[]) => heatSums(heat, covariance, hours);
  const row = (name: string, covariance: readonly (readonly number[])[]): CertaintyRow => {
    const { heatIn, heatOut, cop } = sumsOf(covariance);
    const half = (band: { value: number; high: number } | null) =>
      band === null || band.value === 0 ? NaN : (band.high - band.value) / Math.abs(band.value);
    return { name, heatIn: half(heatIn), heatOut: half(heatOut), cop: half(cop) };
  };
  const all = covarianceOf(typical, null);
  return {
    heat: [
      row("all sensors", all),
      row("the two temperatures not calibrated in one bath", covarianceOf(typical, 0, "apart")),
      row("the two humidities not checked over one salt", covarianceOf(typical, 1, "apart")),
      ...HEAT_READINGS.map((_, k) => row(`without ${NAMES[k]}`, covarianceOf(typical, k))),
    ],
    calibration: [lossRow(request), diffusivityRow(request)],
    sums: sumsOf(all),
  };
}

/** Readings that perfect sensors would give through the year. */
function yearReadings({ year, pressure, airFlow }: CertaintyRequest): Reading[] {
  const { house, intakeTemperature: intake, outletTemperature: outlet } = year;
  const flow = year.fanShare.map((share) =>
    share > 0 ? share * airFlow.charge : -share * airFlow.discharge
  );
  const ratio = intake.map((_, h) =>
    humidityRatioFromRelativeHumidity(
      house.airTemperature[h]!,
      Math.min(1, house.relativeHumidity[h]!),
      pressure,
    )
  );
  const humidity = (temperature: number, w: number) =>
    Number.isNaN(temperature)
      ? NaN
      : Math.min(1, Math.max(0, relativeHumidityFromRatio(temperature, w, pressure)));
  const intakeHumidity = intake.map((temperature, h) => humidity(temperature, ratio[h]!));
  const outletHumidity = outlet.map((temperature, h) => {
    // kg/s of dry air from its heat capacity rate, J/(kg K) of air near 1006
    const dryAir = year.airRate[h]! / 1006;
    const left = dryAir > 0 ? ratio[h]! - year.condensate[h]! / 3600 / dryAir : ratio[h]!;
    return humidity(temperature, Math.max(1e-5, left));
  });
  return [intake, intakeHumidity, outlet, outletHumidity, flow, year.fanPower]
    .map((values) => ({ values, uncertainty: 0, batches: [] }));
}

function meanWhileRunning(values: Float64Array, running: Float64Array): number {
  let [sum, count] = [0, 0];
  values.forEach((value, h) => {
    if (!(running[h]! > 0) || Number.isNaN(value)) return;
    sum += value;
    count++;
  });
  return count === 0 ? 0 : sum / count;
}

/** Standard uncertainty of a reading of some size, with its sensor or without. */
function uncertaintyOf(kind: SensorKind, size: number, there: boolean): number {
  return there
    ? Math.hypot(kind.accuracy, kind.relative * size)
    : Math.hypot(kind.without, kind.withoutRelative * size);
}

/**
 * Covariance of the readings' errors: everything there, one reading left out, or its pair, which
 * stands two places on, calibrated apart.
 */
function covarianceOf(
  typical: readonly number[],
  changed: number | null,
  how: "left out" | "apart" = "left out",
): readonly (readonly number[])[] {
  const gone = how === "left out" ? changed : null;
  const u = KINDS.map((kind, k) => uncertaintyOf(kind, Math.abs(typical[k]!), k !== gone));
  // temperatures 0 and 2, humidities 1 and 3
  const together = (i: number, j: number) =>
    Math.abs(i - j) === 2 && i + j <= 4 && i !== changed && j !== changed;
  return u.map((a, i) =>
    u.map((b, j) => i === j ? a * b : together(i, j) ? SHARED_ERROR * a * b : 0)
  );
}

/** Loss coefficient of the house from quiet nights: heat given by the store over the difference. */
function lossRow({ year, outside }: CertaintyRequest): CalibrationRow {
  const nights = Array.from(year.fanShare, (share, h) => ({ share, h }))
    .filter(({ share, h }) => share < 0 && year.house.solar[h]! < 1);
  const mean = (value: (h: number) => number) =>
    nights.reduce((sum, { h }) => sum + value(h), 0) / Math.max(1, nights.length);
  const inside = mean((h) => year.house.airTemperature[h]!);
  const out = mean((h) => outside[h]!);
  const air = findSensorKind("air-temperature");
  const outdoors = findSensorKind("outdoor-temperature");
  const flow = findSensorKind("air-flow");
  const half = (uIn: number, uOut: number, uHeat: number) => {
    const found = propagate(
      estimates([1, inside, out], [uHeat, uIn, uOut]),
      ([heat, warm, cold]) => [heat! / (warm! - cold!)],
    );
    return NORMAL_95 * found.uncertainties[0]! / Math.abs(found.values[0]!);
  };
  // two sensors inside and two outside, each pair calibrated in one bath
  const two = (u: number) => u * Math.sqrt((1 + SHARED_ERROR) / 2);
  const [uIn, uOut] = [two(air.accuracy), two(outdoors.accuracy)];
  return {
    name: "loss coefficient of the house, from quiet nights",
    sensors: "inside and outdoor temperature, heat of the store",
    withAll: half(uIn, uOut, flow.relative),
    without: [
      { name: "one inside sensor only", half: half(air.accuracy, uOut, flow.relative) },
      { name: "no outdoor sensor", half: half(uIn, outdoors.without, flow.relative) },
      { name: "no air flow meter", half: half(uIn, uOut, flow.withoutRelative) },
    ],
  };
}

/** m, how surely the depth of a probe is known; K, noise of a yearly amplitude; no source. */
const DEPTH = 0.02;
const AMPLITUDE = 0.1;

/** Diffusivity from the yearly amplitudes at two depths: α = π·Δz²/(P·ln²(A₁/A₂)). */
function diffusivityRow({ ground }: CertaintyRequest): CalibrationRow {
  const period = 365 * 86400;
  const damping = Math.sqrt(ground.diffusivity * period / Math.PI);
  const half = (shallow: number, deep: number) => {
    const at = (depth: number) => ground.amplitude * Math.exp(-depth / damping);
    const found = propagate(
      estimates(
        [shallow, deep, at(shallow), at(deep)],
        [DEPTH, DEPTH, AMPLITUDE, AMPLITUDE],
      ),
      ([one, other, high, low]) => [
        Math.PI * (other! - one!) ** 2 / (period * Math.log(high! / low!) ** 2),
      ],
    );
    return NORMAL_95 * found.uncertainties[0]! / found.values[0]!;
  };
  return {
    name: "diffusivity of the ground, from the yearly wave",
    sensors: "undisturbed soil probes at 0.3 and 1.5 m",
    withAll: half(0.3, 1.5),
    without: [
      { name: "no probe at 1.5 m (0.3 and 1.0 m)", half: half(0.3, 1) },
      { name: "probes at 0.3 and 0.6 m only", half: half(0.3, 0.6) },
    ],
  };
}
