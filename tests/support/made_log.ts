/** A made-up log of a house with a store, as its loggers would write it, with faults on demand. */
import { randomNormal } from "d3-random";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import type { LogSource } from "../../lib/measured/mod.ts";

const DAY = 86400;

/** 1 February 2026, 0:00 UTC-6 */
export const MADE_START = Date.UTC(2026, 1, 1, 6) / 1000;

/** What a sensor of the made log writes. */
interface MadeSensor {
  readonly name: string;
  readonly logger: "house" | "duct" | "soil";
  readonly map: string;
  readonly digits: number;
  readonly noise: number;
  /** value at the middle of a reading, time in s since the start */
  readonly see: (time: number) => number;
}

/** How a row of the made log is changed before it is written. */
export interface MadeFault {
  /** changes what a sensor shows; time in s since the start */
  readonly value?: (sensor: string, time: number, shown: number, all: Shown) => number | string;
  /** s that a logger's clock is ahead */
  readonly ahead?: (logger: string, time: number) => number;
  /** true where a logger writes no row */
  readonly silent?: (logger: string, time: number) => boolean;
}

/** What every sensor would show at the time of a row. */
export type Shown = Readonly<Record<string, number>>;

/** Interval of each logger, s. */
export const MADE_INTERVALS = { house: 1800, duct: 900, soil: 3600 } as const;

/** A made-up winter: slow weather, sun with clouds, a house, a duct, soil. */
function world(seed: number, days: number) {
  const random = xoroshiro128plus(seed);
  const even = () => uniformFloat64(random);
  const normal = randomNormal.source(even)(0, 1);
  const hours = days * 24 + 48;
  // weather that wanders, and clouds by hour
  const wander = new Float64Array(hours);
  const cloud = new Float64Array(hours);
  for (let h = 1; h < hours; h++) {
    wander[h] = 0.985 * wander[h - 1]! + 0.6 * normal();
    cloud[h] = Math.min(1, Math.max(0, 0.8 * cloud[h - 1]! + 0.1 + 0.25 * normal()));
  }
  const between = (series: Float64Array, time: number) => {
    const at = Math.max(0, Math.min(hours - 2, time / 3600));
    const k = Math.floor(at);
    return series[k]! + (at - k) * (series[k + 1]! - series[k]!);
  };
  const hourOfDay = (time: number) => (time % DAY) / 3600;
  const sun = (time: number) => {
    const height = Math.sin(Math.PI * (hourOfDay(time) - 7) / 10.5);
    if (height <= 0 || hourOfDay(time) < 7 || hourOfDay(time) > 17.5) return 0;
    return 650 * height * (1 - 0.75 * between(cloud, time));
  };
  const outside = (time: number) =>
    -6 + between(wander, time) - 4 * Math.cos(2 * Math.PI * (hourOfDay(time) - 3) / 24);
  // the house follows the sun with an hour's delay, and keeps some of it
  const step = 600;
  const air = new Float64Array(hours * 6);
  let level = 4;
  for (let k = 0; k < air.length; k++) {
    const target = outside(k * step) + 9 + sun(k * step) / 28;
    level += (target - level) * step / 4500;
    air[k] = level;
  }
  const inside = (time: number) => {
    const at = Math.max(0, Math.min(air.length - 2, time / step));
    const k = Math.floor(at);
    return air[k]! + (at - k) * (air[k + 1]! - air[k]!);
  };
  const humid = (time: number) =>
    Math.min(
      0.97,
      Math.max(0.3, 0.9 - 0.018 * (inside(time) - 4) + 0.02 * between(wander, time) / 4),
    );
  const fan = (time: number) => inside(time) > 17 || inside(time) < 3 ? 1 : 0;
  const ground = (depth: number, time: number) =>
    6 + 3 * depth - 0.03 * time / DAY / (0.5 + depth) +
    1.2 * Math.exp(-depth / 0.35) * Math.sin(2 * Math.PI * time / (11 * DAY) - depth / 0.35) +
    2 * Math.exp(-depth / 0.11) *
      Math.sin(2 * Math.PI * (hourOfDay(time) - 11) / 24 - depth / 0.11);
  const offset = (name: string) => {
    let hash = seed;
    for (const letter of name) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x9e3779b1);
    return ((hash >>> 8) % 1000) / 1000 - 0.5;
  };
  return { normal, sun, outside, inside, humid, fan, ground, offset };
}

function sensorsOf(w: ReturnType<typeof world>): readonly MadeSensor[] {
  const air = (
    name: string,
    logger: MadeSensor["logger"],
    zone: string,
    see: MadeSensor["see"],
  ) => ({
    name,
    logger,
    map: `{ column: ${name}, quantity: airTemperature, unit: degC, zone: ${zone} }`,
    digits: 2,
    noise: 0.08,
    see: (time: number) => see(time) + 0.3 * w.offset(name),
  });
  const soil = (name: string, zone: string, depth: number, see: MadeSensor["see"]) => ({
    name,
    logger: "soil" as const,
    map:
      `{ column: ${name}, quantity: soilTemperature, unit: degF, zone: ${zone}, depth: ${depth} m }`,
    digits: 2,
    noise: 0.04,
    see: (time: number) => 32 + 1.8 * (see(time) + 0.2 * w.offset(name)),
  });
  const outlet = (time: number) => {
    const store = 11 + 0.2 * (w.inside(time) - 8);
    return w.fan(time) === 1 ? store : store + 0.4;
  };
  return [
    air("inside_a", "house", "inside", w.inside),
    air("inside_b", "house", "inside", w.inside),
    {
      name: "inside_rh",
      logger: "house",
      map: "{ column: inside_rh, quantity: relativeHumidity, unit: '%', zone: inside }",
      digits: 1,
      noise: 0.4,
      see: (time) => 100 * w.humid(time) + w.offset("rh"),
    },
    ...["out_a", "out_b"].map((name): MadeSensor => ({
      ...air(name, "house", "outside", w.outside),
      map: `{ column: ${name}, quantity: outsideTemperature, unit: degC, zone: outside }`,
    })),
    {
      name: "sun",
      logger: "house",
      map: "{ column: sun, quantity: globalRadiation, unit: W/m2, zone: outside }",
      digits: 0,
      noise: 1,
      see: w.sun,
    },
    air("intake", "duct", "intake", (time) => w.inside(time) + 0.4 * w.sun(time) / 650),
    air("outlet", "duct", "outlet", outlet),
    {
      name: "intake_rh",
      logger: "duct",
      map: "{ column: intake_rh, quantity: relativeHumidity, unit: '%', zone: intake }",
      digits: 1,
      noise: 0.4,
      see: (time) => 100 * w.humid(time) + 2 * w.offset("intake"),
    },
    {
      name: "fan",
      logger: "duct",
      map: "{ column: fan, quantity: power, unit: W, zone: fan }",
      digits: 0,
      noise: 0,
      see: (time) => w.fan(time) * 540,
    },
    soil("garden_30", "garden", 0.3, (time) => w.ground(0.3, time)),
    soil("garden_60", "garden", 0.6, (time) => w.ground(0.6, time)),
    soil("garden_100", "garden", 1, (time) => w.ground(1, time)),
    soil("store_1", "store", 0.8, (time) => 14 + w.ground(0.25, time) / 3),
  ];
}

/** Map of the made log. */
export function madeMap(seed = 1): string {
  const sensors = sensorsOf(world(seed, 1));
  const logger = (name: string, extra = "") =>
    `  ${name}:\n    files: ["${name}*.csv"]\n    time:\n      timeZone: UTC-6\n${extra}    sensors:\n` +
    sensors.filter((one) => one.logger === name)
      .map((one) => `      ${one.name}: ${one.map}\n`).join("");
  return `loggers:\n${logger("house")}${logger("duct")}${logger("soil")}`;
}

function stamp(seconds: number): string {
  return new Date((seconds - 6 * 3600) * 1000).toISOString().slice(0, 16).replace("T", " ");
}

/**
 * Files of a made log: house, duct and soil.
 *
 * @param seed another number, another winter
 * @param days length
 * @param fault what is wrong with it
 */
export function madeLog(seed: number, days = 40, fault: MadeFault = {}): LogSource[] {
  const w = world(seed, days);
  const sensors = sensorsOf(w);
  return (["house", "duct", "soil"] as const).map((logger) => {
    const interval = MADE_INTERVALS[logger];
    const own = sensors.filter((one) => one.logger === logger);
    const lines = [["time", ...own.map(({ name }) => name)].join(",")];
    for (let time = 0; time + interval <= days * DAY; time += interval) {
      const shown: Record<string, number> = {};
      for (const { name, noise, see } of own) {
        shown[name] = see(time + interval / 2) + noise * w.normal();
      }
      if (shown.inside_rh !== undefined) shown.inside_rh = Math.min(100, shown.inside_rh);
      if (shown.sun !== undefined) shown.sun = Math.max(0, shown.sun);
      if (fault.silent?.(logger, time) ?? false) continue;
      const cells = own.map(({ name, digits }) => {
        const value = fault.value?.(name, time, shown[name]!, shown) ?? shown[name]!;
        return typeof value === "string" ? value : value.toFixed(digits);
      });
      const ahead = fault.ahead?.(logger, time) ?? 0;
      lines.push([stamp(MADE_START + time + interval + ahead), ...cells].join(","));
    }
    return { file: `${logger}.csv`, text: lines.join("\n") + "\n" };
  });
}
