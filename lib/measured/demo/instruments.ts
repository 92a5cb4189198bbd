/**
 * The sensors of the made-up winter: what each sees of the true year; long because every sensor of the
 * list stands here once.
 *
 * @module
 */
import { relativeHumidityFromRatio } from "../../air/mod.ts";
import { HOUR, HOURS_PER_YEAR, YEAR } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import type { Quantity } from "../log/types.ts";
import { tracerSeries } from "./tracer.ts";
import { TRUE_STEP, type TrueProbes, type TrueYear } from "./true_year.ts";

/** Name of a logger of the winter. */
export type DemoLoggerName = "air" | "house" | "soil";

/** A logger: its interval and what its clock does. */
export interface DemoLogger {
  /** its name, and that of its file */
  readonly name: DemoLoggerName;
  /** s between rows */
  readonly interval: number;
  /** hours east of UTC that its clock is set to */
  readonly timeZone: number;
  /** s that its clock is ahead, known to its owner */
  readonly ahead: number;
}

/** A sensor of the winter. */
export interface DemoSensor {
  /** unique; the head of its column */
  readonly name: string;
  /** logger it hangs on */
  readonly logger: DemoLoggerName;
  /** what it measures */
  readonly quantity: Quantity;
  /** where */
  readonly zone: string;
  /** unit of its column */
  readonly unit: string;
  /** factor from SI to that unit */
  readonly scale: number;
  /** number of decimals written */
  readonly digits: number;
  /** standard uncertainty: a fixed part in the SI unit, or a share of the reading, as `relative` says */
  readonly accuracy: number;
  /** true where the accuracy is a share of the reading */
  readonly relative: boolean;
  /** batch it was calibrated in */
  readonly batch?: string;
  /** m below the floor */
  readonly depth?: number;
  /** least value it can show, in the SI unit */
  readonly least?: number;
  /** greatest value it can show, in the SI unit */
  readonly most?: number;
  /** SI value it would show without any error: mean from one time to another, s of the year */
  readonly see: (from: number, to: number) => number;
}

/** Pa/(m³/s)² between the headers: what the demo's plan has at its flow, every tube open all winter. */
const RESISTANCE = 99;
/** Depths of the probes in undisturbed ground, m. */
const GARDEN = [0.3, 0.6, 1, 1.5] as const;
/** Depths of the probes under the middle of the floor, m. */
const FLOOR = [0.1, 0.25, 0.45] as const;

/** Where the winter's probes stand. */
export const DEMO_PLACES: Omit<TrueProbes, "fromHour" | "hours"> = {
  house: [
    ...[0.1, 0.5, 0.9].map((along) => ({
      along,
      across: 0,
      depth: 0.8,
      every: along === 0.5 ? 1 : 3,
    })),
    ...FLOOR.map((depth) => ({ along: 0.5, across: 0, depth, every: 1 })),
  ],
  garden: [...GARDEN],
};

/** The loggers, each with a clock of its own. */
export function demoLoggers(timeZone: number): readonly DemoLogger[] {
  return [
    { name: "air", interval: 900, timeZone, ahead: 0 },
    { name: "house", interval: 1800, timeZone: 0, ahead: 180 },
    { name: "soil", interval: 3600, timeZone, ahead: 0 },
  ];
}

/** Mean of a series of steps from one time of the year to another, which may lie past its end. */
function meanOfSteps(series: Float64Array, step: number) {
  return (from: number, to: number) => {
    let sum = 0;
    for (let at = from; at < to - 1e-6;) {
      const place = Math.floor((at + 1e-6) / step);
      const end = Math.min(to, (place + 1) * step);
      sum += series[place % series.length]! * (end - at);
      at = end;
    }
    return sum / (to - from);
  };
}

/** Hourly means as a smooth course, which goes through the middle of each hour. */
function smooth(series: Float64Array) {
  return (from: number, to: number) => {
    const at = ((from + to) / 2 / HOUR - 0.5 + HOURS_PER_YEAR) % HOURS_PER_YEAR;
    const before = Math.floor(at);
    const next = series[(before + 1) % series.length]!;
    return series[before]! + (at - before) * (next - series[before]!);
  };
}

/** Values at the full hours as a smooth course. */
function between(series: Float64Array) {
  const shifted = smooth(series);
  return (from: number, to: number) => shifted(from + HOUR / 2, to + HOUR / 2);
}

/** All sensors of the winter, whose time in s of the year says when a tracer was let out. */
export function demoSensors(
  year: TrueYear,
  climate: ClimateYear,
  time: { readonly from: number; readonly lasts: number },
): readonly DemoSensor[] {
  const steps = (series: Float64Array) => meanOfSteps(series, TRUE_STEP);
  const humidity = (temperature: Float64Array, ratio: Float64Array) =>
    steps(temperature.map((value, k) =>
      Math.min(
        1,
        relativeHumidityFromRatio(
          value,
          ratio[k]!,
          year.pressure[Math.floor(k * TRUE_STEP / HOUR)]!,
        ),
      )
    ));
  const degrees = { unit: "degC", scale: 1, digits: 2, accuracy: 0.15, relative: false } as const;
  const share = {
    quantity: "relativeHumidity",
    unit: "%",
    scale: 100,
    digits: 1,
    accuracy: 0.015,
    relative: false,
    least: 0,
    most: 1,
  } as const;
  const airProbe = { quantity: "airTemperature", ...degrees } as const;
  const outdoors = { quantity: "outsideTemperature", zone: "outside", ...degrees } as const;
  const soil = { logger: "soil", quantity: "soilTemperature", ...degrees } as const;
  const sun = meanOfSteps(climate.globalHorizontal, HOUR);
  return [
    {
      name: "intake",
      logger: "air",
      zone: "intake",
      ...airProbe,
      batch: "bath",
      see: steps(year.intake),
    },
    {
      name: "intake_rh",
      logger: "air",
      zone: "intake",
      ...share,
      see: humidity(year.intake, year.ratio),
    },
    {
      name: "outlet",
      logger: "air",
      zone: "outlet",
      ...airProbe,
      batch: "bath",
      see: steps(year.outlet),
    },
    {
      name: "outlet_rh",
      logger: "air",
      zone: "outlet",
      ...share,
      see: humidity(year.outlet, year.outletRatio),
    },
    {
      name: "flow",
      logger: "air",
      quantity: "airFlow",
      zone: "duct",
      unit: "m3/s",
      scale: 1,
      digits: 3,
      accuracy: 0.04,
      relative: true,
      least: 0,
      see: steps(year.airFlow),
    },
    {
      name: "fan",
      logger: "air",
      quantity: "power",
      zone: "fan",
      unit: "W",
      scale: 1,
      digits: 0,
      accuracy: 0.01,
      relative: true,
      least: 0,
      see: steps(year.fanPower),
    },
    {
      name: "header_dp",
      logger: "air",
      quantity: "pressure",
      zone: "supply header",
      unit: "Pa",
      scale: 1,
      digits: 1,
      accuracy: 1,
      relative: false,
      see: steps(year.airFlow.map((flow) => RESISTANCE * flow ** 2)),
    },
    {
      name: "tracer",
      logger: "air",
      quantity: "carbonDioxide",
      zone: "inside",
      unit: "ppm",
      scale: 1,
      digits: 0,
      accuracy: 20,
      relative: false,
      least: 0,
      see: steps(tracerSeries(year, time)),
    },
    { name: "house", logger: "house", zone: "inside", ...airProbe, see: steps(year.air) },
    { name: "house_2", logger: "house", zone: "inside", ...airProbe, see: steps(year.air) },
    {
      name: "house_rh",
      logger: "house",
      zone: "inside",
      ...share,
      see: humidity(year.air, year.ratio),
    },
    {
      name: "control",
      logger: "house",
      zone: "control house",
      ...airProbe,
      see: smooth(year.control),
    },
    { name: "outdoors", logger: "house", ...outdoors, see: smooth(climate.dryBulb) },
    { name: "outdoors_2", logger: "house", ...outdoors, see: smooth(climate.dryBulb) },
    {
      name: "outdoors_rh",
      logger: "house",
      zone: "outside",
      ...share,
      see: smooth(climate.relativeHumidity),
    },
    {
      name: "sun",
      logger: "house",
      quantity: "globalRadiation",
      zone: "outside",
      unit: "W/m2",
      scale: 1,
      digits: 0,
      accuracy: 0.03,
      relative: true,
      least: 0,
      see: sun,
    },
    {
      name: "wind",
      logger: "house",
      quantity: "windSpeed",
      zone: "outside",
      unit: "m/s",
      scale: 1,
      digits: 1,
      accuracy: 0.3,
      relative: false,
      least: 0,
      see: smooth(climate.windSpeed),
    },
    ...[0, 1, 2].map((k): DemoSensor => ({
      name: `store_${k + 1}`,
      zone: "store",
      ...soil,
      depth: DEMO_PLACES.house[k]!.depth,
      see: between(year.probes[k]!),
    })),
    ...FLOOR.map((depth, k): DemoSensor => ({
      name: `floor_${k + 1}`,
      zone: "floor",
      ...soil,
      depth,
      see: between(year.probes[3 + k]!),
    })),
    ...GARDEN.map((depth, k): DemoSensor => ({
      name: `garden_${k + 1}`,
      zone: "garden",
      ...soil,
      depth,
      see: between(year.garden[k]!),
    })),
  ];
}

/** A time within the year, s. */
export const withinYear = (seconds: number): number => ((seconds % YEAR) + YEAR) % YEAR;
