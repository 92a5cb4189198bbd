/** The rows that loggers write of a true year: errors, noise, planted faults. @module */
import { HOUR } from "../../basics/mod.ts";
import { SHARED_ERROR } from "../flows/readings.ts";
import { normalStream, uniformStream } from "./dice.ts";
import type { DemoLogger, DemoSensor } from "./instruments.ts";
import type { PlantedFault } from "./planted.ts";

/** Scatter of a single reading over its standard uncertainty. */
const NOISE = 0.25;
/** Share of rows that a logger loses for no reason. */
const LOST = 0.0005;
/** W/m² of sun at which a sun-hit probe is off by the size of its fault. */
const FULL_SUN = 600;

/** What a winter is written with. */
export interface WinterSetting {
  /** s of the year at which the log begins, on the house's standard time */
  readonly from: number;
  /** s that it lasts */
  readonly lasts: number;
  /** s since 1970 UTC at which it begins */
  readonly start: number;
  /** whole number that all errors hang on; null for a log without any error or fault */
  readonly seed: number | null;
  /** faults to plant; none in a log without errors */
  readonly faults: readonly PlantedFault[];
}

/** One row: the logger's own clock, and a cell for each of its sensors, NaN for none. */
export interface LoggerRow {
  /** s since 1970 of the logger's clock at the end of the interval, as if it were UTC */
  readonly stamp: number;
  /** SI values */
  readonly cells: readonly number[];
}

/** What lasts of a sensor's error, as a number of standard uncertainties. */
function lastingError({ name, batch }: DemoSensor, seed: number): number {
  const own = normalStream(seed, `error of ${name}`)();
  if (batch === undefined) return own;
  const shared = normalStream(seed, `error of batch ${batch}`)();
  return Math.sqrt(SHARED_ERROR) * shared + Math.sqrt(1 - SHARED_ERROR) * own;
}

/** What a sensor shows: a function of an interval, s since the log began. */
function shown(
  sensor: DemoSensor,
  sensors: readonly DemoSensor[],
  setting: WinterSetting,
): (from: number, to: number) => number {
  const { from: begin, seed } = setting;
  const true_ = (one: DemoSensor) => (from: number, to: number) =>
    one.see(begin + from, begin + to);
  if (seed === null) return true_(sensor);
  const sun = sensors.find(({ quantity }) => quantity === "globalRadiation");
  const faults = setting.faults.filter(({ channel, other }) =>
    channel === sensor.name || other === sensor.name
  );
  const error = lastingError(sensor, seed);
  const noise = normalStream(seed, `noise of ${sensor.name}`);
  const { accuracy, relative, least = -Infinity, most = Infinity } = sensor;
  let held: number | null = null;
  return (from, to) => {
    const now = faults.filter((fault) => to > fault.from && to <= fault.to);
    const swap = now.find(({ kind }) => kind === "swapped");
    const stands = swap === undefined
      ? sensor
      : sensors.find(({ name }) =>
        name === (swap.channel === sensor.name ? swap.other : swap.channel)
      )!;
    const value = true_(stands)(from, to);
    const unit = relative ? accuracy * Math.abs(value) : accuracy;
    let seen = value + unit * (error + NOISE * noise());
    for (const { kind, size, ...fault } of now) {
      if (kind === "spike") seen += size;
      if (kind === "pinned") seen = size;
      if (kind === "sunHit") seen += size * true_(sun!)(from, to) / FULL_SUN;
      if (kind === "drift") seen += size * (to - fault.from) / (fault.to - fault.from);
      if (kind === "stuck") seen = held ?? seen;
    }
    if (!now.some(({ kind }) => kind === "stuck")) held = seen;
    return Math.min(most, Math.max(least, seen));
  };
}

/** s that a logger's clock is ahead of what its owner knows, at a time since the log began. */
function jumpOf(logger: DemoLogger, faults: readonly PlantedFault[], at: number): number {
  return faults
    .filter(({ kind, channel, from, to }) =>
      (kind === "clock" || kind === "daylightSaving") && channel === logger.name && at > from &&
      at <= to
    )
    .reduce((sum, { size }) => sum + size, 0);
}

/**
 * The rows that a logger writes.
 *
 * @param logger its interval and clock
 * @param sensors all sensors of the winter
 * @param setting time, seed and faults
 */
export function loggerRows(
  logger: DemoLogger,
  sensors: readonly DemoSensor[],
  setting: WinterSetting,
): LoggerRow[] {
  const { interval, name, timeZone, ahead } = logger;
  const { seed } = setting;
  const faults = seed === null ? [] : setting.faults;
  const own = sensors.filter((sensor) => sensor.logger === name)
    .map((sensor) => shown(sensor, sensors, setting));
  const lost = seed === null ? () => 1 : uniformStream(seed, `rows lost by ${name}`);
  const rows: LoggerRow[] = [];
  for (let to = interval; to <= setting.lasts + 1e-6; to += interval) {
    const cells = own.map((see) => see(to - interval, to));
    const stamp = setting.start + to + timeZone * HOUR + (seed === null ? 0 : ahead) +
      jumpOf(logger, faults, to);
    const out = faults.some(({ kind, channel, from, to: until }) =>
      kind === "gap" && channel === name && to > from && to <= until
    );
    if (!out && lost() >= LOST) rows.push({ stamp, cells });
  }
  return rows;
}
