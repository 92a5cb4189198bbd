/** All files of one logger as one series in true time. @module */
import { DAY, describeLocation, InputError } from "../../basics/mod.ts";
import { type ClockChange, seasonalChanges, setBack, summerRows } from "./clock_changes.ts";
import { againstRules, type ClockStretch, summerFound } from "./clock_doubts.ts";
import type { LoggerFile } from "./logger_file.ts";
import { oddCells } from "./odd_cells.ts";
import { timeText } from "./time_text.ts";
import type { LoggerMap } from "./map.ts";
import type { Finding, Sensor } from "./types.ts";
import { zoneTimes } from "./zone_rules.ts";

/** Readings of one logger, one after the other. */
export interface LoggerSeries {
  /** its name */
  readonly logger: string;
  /** s between readings: the most common one */
  readonly interval: number;
  /** s since 1970 UTC, start of the time that each reading stands for; rising */
  readonly times: Float64Array;
  /** its sensors */
  readonly sensors: readonly Sensor[];
  /** SI values by sensor; NaN where there is none */
  readonly values: readonly Float64Array[];
  /** what the rows themselves show: daylight saving, cells that are no value */
  readonly findings: readonly Finding[];
  /** where its clock was set back: times repeat with other readings */
  readonly setBacks: readonly SetBack[];
}

/** A clock that was set back. */
export interface SetBack {
  /** s since 1970 UTC by the clock after it, start of the first reading */
  readonly at: number;
  /** s that the clock moved ahead, below 0 */
  readonly moved: number;
}

/** Rows further from the others than this were written by a clock that had lost its time. */
const LOST_CLOCK = 400 * DAY;

/** A row by its file and its place in it. */
interface Written {
  /** file by row */
  readonly file: Uint16Array;
  /** row of that file */
  readonly row: Uint32Array;
  /** s of the logger's clock */
  readonly clock: Float64Array;
}

/**
 * Joins the files of a logger.
 *
 * @param logger how it writes
 * @param files its files; rows that stand twice are added to their names
 */
export function loggerSeries(logger: LoggerMap, files: readonly LoggerFile[]): LoggerSeries {
  const utc = files[0]!.utc;
  const mixed = files.find((one) => one.utc !== utc);
  if (mixed !== undefined) {
    throw new InputError(
      `Cannot join the files of logger "${logger.name}": the times of ${files[0]!.file} and of ` +
        "this file differ in whether they tell their distance from UTC",
      { file: mixed.file },
    );
  }
  const written = withoutLostClocks(inOrderWritten(files), files);
  const interval = usualInterval(written.clock.slice().sort());
  const value = (sensor: number, at: number) =>
    files[written.file[at]!]!.values[sensor]![written.row[at]!]!;
  const differ = (one: number, other: number) =>
    logger.sensors.some((_, s) => !Object.is(value(s, one), value(s, other)));
  const clock = trueTimes(logger, written.clock, { interval, utc, differ });
  const order = rising(clock.times);
  const kept = withoutDoubles({ order, times: clock.times, written, files, differ });
  const early = { start: 0, middle: interval / 2, end: interval }[logger.stampAt];
  const times = Float64Array.from(kept, (at) => clock.times[at]! - early);
  const timeOf = (at: number) => clock.times[at]! - early;
  return {
    logger: logger.name,
    interval,
    times,
    sensors: logger.sensors.map(({ sensor }) => sensor),
    values: logger.sensors.map((_, s) => Float64Array.from(kept, (at) => value(s, at))),
    findings: [
      ...clock.changes.map(({ from, to, kind, message }): Finding => ({
        kind,
        channel: logger.name,
        from: timeOf(from),
        to: timeOf(to - 1) + interval,
        message,
      })),
      ...oddCells(logger, files, { written, timeOf, interval }),
    ],
    setBacks: clock.setBacks.map(({ row, moved }) => ({ at: timeOf(row), moved })),
  };
}

/** Rows in the order the logger wrote them: files by their first row, newest-first files turned. */
function inOrderWritten(files: readonly LoggerFile[]): Written {
  const total = files.reduce((sum, { clock }) => sum + clock.length, 0);
  const written: Written = {
    file: new Uint16Array(total),
    row: new Uint32Array(total),
    clock: new Float64Array(total),
  };
  const turned = files.map(({ clock }) => {
    let rises = 0;
    for (let i = 1; i < clock.length; i++) rises += Math.sign(clock[i]! - clock[i - 1]!);
    return rises < 0;
  });
  const first = files.map(({ clock }, f) => turned[f] ? clock.at(-1)! : clock[0]!);
  let at = 0;
  for (const f of files.map((_, f) => f).sort((a, b) => first[a]! - first[b]! || a - b)) {
    const { clock } = files[f]!;
    for (let i = 0; i < clock.length; i++, at++) {
      const row = turned[f] ? clock.length - 1 - i : i;
      written.file[at] = f;
      written.row[at] = row;
      written.clock[at] = clock[row]!;
    }
  }
  return written;
}

/** Leaves out rows years away from most others, and names them. */
function withoutLostClocks(written: Written, files: readonly LoggerFile[]): Written {
  const sorted = written.clock.slice().sort();
  let [best, from] = [0, 0];
  let [low, high] = [-Infinity, Infinity];
  for (let i = 1; i <= sorted.length; i++) {
    if (i < sorted.length && sorted[i]! - sorted[i - 1]! <= LOST_CLOCK) continue;
    if (i - from > best) [best, low, high] = [i - from, sorted[from]!, sorted[i - 1]!];
    from = i;
  }
  if (best === sorted.length) return written;
  const kept: number[] = [];
  written.clock.forEach((time, at) => {
    if (time >= low && time <= high) {
      kept.push(at);
      return;
    }
    const file = files[written.file[at]!]!;
    const years = Math.round((time < low ? low - time : time - high) / (365 * DAY));
    file.names.add(
      file.lines[written.row[at]!]!,
      "lost",
      () =>
        `The time ${
          timeText(time)
        } is ${years} years from most rows: the logger's clock had lost ` +
        "its time; correct the times, or delete the rows",
    );
  });
  return {
    file: Uint16Array.from(kept, (at) => written.file[at]!),
    row: Uint32Array.from(kept, (at) => written.row[at]!),
    clock: Float64Array.from(kept, (at) => written.clock[at]!),
  };
}

/** Most common difference of times that follow each other, s; 60 for a single row. */
function usualInterval(clock: Float64Array): number {
  const counts = new Map<number, number>();
  for (let i = 1; i < clock.length; i++) {
    const step = Math.round(clock[i]! - clock[i - 1]!);
    if (step > 0) counts.set(step, (counts.get(step) ?? 0) + 1);
  }
  let [most, interval] = [0, 60];
  for (const [step, count] of counts) {
    if (count > most || (count === most && step < interval)) [most, interval] = [count, step];
  }
  return interval;
}

function trueTimes(
  logger: LoggerMap,
  clock: Float64Array,
  rows: {
    readonly interval: number;
    readonly utc: boolean;
    readonly differ: (one: number, other: number) => boolean;
  },
): {
  readonly times: Float64Array;
  readonly changes: readonly ClockStretch[];
  readonly setBacks: readonly ClockChange[];
} {
  const { interval, utc, differ } = rows;
  const byRules = !utc && logger.zoneRules !== null
    ? zoneTimes(logger.zoneRules, clock, interval)
    : null;
  const seasonal = utc ? [] : seasonalChanges(clock, interval, !logger.daylightSaving);
  const summers = summerRows(seasonal, clock);
  const times = byRules?.times ?? clock.slice();
  const changes: ClockStretch[] = byRules?.odd.map((one) => againstRules(one, logger)) ?? [];
  if (!utc && byRules === null) {
    for (let i = 0; i < times.length; i++) times[i] = clock[i]! - logger.timeZone * 3600;
    if (logger.daylightSaving) {
      for (const { from, to } of summers) for (let i = from; i < to; i++) times[i]! -= 3600;
    } else changes.push(...summers.map((summer) => summerFound(summer, logger)));
  }
  for (const { from, ahead } of logger.clock ?? []) {
    for (let i = 0; i < times.length; i++) {
      if (clock[i]! >= from) times[i] = times[i]! - ahead + aheadBefore(logger, from, clock[i]!);
    }
  }
  const known = new Set(seasonal.map(({ row }) => row));
  const told = logger.clock !== null && logger.clock.length > 0;
  const back = told ? [] : setBack(clock, interval, differ).filter(({ row }) => !known.has(row));
  return { times, changes, setBacks: back };
}

/** What the pieces before one said of the same row. */
function aheadBefore(logger: LoggerMap, from: number, clock: number): number {
  const earlier = (logger.clock ?? []).filter((one) => one.from < from && clock >= one.from);
  return earlier.reduce(
    (latest, one) => one.from >= latest.from ? one : latest,
    { from: -Infinity, ahead: 0 },
  ).ahead;
}

/** Places of rising times; equal ones in the order written. */
function rising(times: Float64Array): Uint32Array {
  const order = Uint32Array.from(times, (_, at) => at);
  let sorted = true;
  for (let i = 1; i < times.length && sorted; i++) sorted = times[i]! >= times[i - 1]!;
  return sorted ? order : order.sort((a, b) => times[a]! - times[b]! || a - b);
}

function withoutDoubles(
  { order, times, written, files, differ }: {
    readonly order: Uint32Array;
    readonly times: Float64Array;
    readonly written: Written;
    readonly files: readonly LoggerFile[];
    readonly differ: (one: number, other: number) => boolean;
  },
): number[] {
  const kept: number[] = [];
  for (const at of order) {
    const last = kept.at(-1);
    if (last === undefined || times[at] !== times[last]) {
      kept.push(at);
      continue;
    }
    const file = files[written.file[at]!]!;
    const other = differ(last, at);
    file.names.add(
      file.lines[written.row[at]!]!,
      other ? "doubled, other" : "doubled",
      () =>
        `The time ${timeText(written.clock[at]!)} stands already in ${
          describeLocation({
            file: files[written.file[last]!]!.file,
            line: files[written.file[last]!]!.lines[written.row[last]!]!,
          })
        }` +
        (other ? " with other readings; the first is kept: correct or delete one" : ", the same"),
    );
  }
  return kept;
}
