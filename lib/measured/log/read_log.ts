/** Reads the files of a log: every row read or named, faults found, all channels on one step. @module */
import { InputError } from "../../basics/mod.ts";
import { commonStep, onCommonStep } from "./common_step.ts";
import { clockFindings, clockJumps, clockOffset, isOff } from "./faults/clocks.ts";
import { findFaults } from "./find_faults.ts";
import { gapFindings } from "./gaps.ts";
import { type LoggerFile, type LogSource, readLoggerFile } from "./logger_file.ts";
import { type LoggerSeries, loggerSeries } from "./logger_series.ts";
import { loggerOf, type LogMap } from "./map.ts";
import { screenSeries } from "./screen.ts";
import { type Finding, type Log, LOG_FLAGS, type LogFile } from "./types.ts";
import { showNumber } from "../../units/mod.ts";

export type { LogSource } from "./logger_file.ts";

/** How a log is read. */
export interface LogOptions {
  /** s of the common step; the coarsest interval of the loggers where left out */
  readonly step?: number;
  /** told the number of rows done of a file after each block */
  readonly progress?: (file: string, rows: number) => void;
}

/**
 * Reads a log. Text is taken in blocks and only its numbers are kept. No value is filled in or
 * mended: gaps are NaN, faults are flagged and named; only clocks that the map says how to mend
 * (daylight saving, offsets) are.
 *
 * @param sources files of all loggers, in any order
 * @param map which column holds which sensor
 * @param options step and progress
 * @throws {InputError} for files that no logger of the map names, that are empty, lack a column or
 * have no row with a time
 */
export function readLog(
  sources: readonly LogSource[],
  map: LogMap,
  options: LogOptions = {},
): Log {
  const read = sources.map((source) => {
    const logger = loggerOf(map, source.file);
    if (logger === null) throw noLogger(source.file, map);
    const { progress } = options;
    const tell = progress === undefined ? undefined : (rows: number) => progress(source.file, rows);
    return { logger, file: readLoggerFile(source, logger, tell) };
  });
  if (read.length === 0) throw new InputError("Cannot read a log of no files");
  const loggers = map.loggers.filter((logger) => read.some((one) => one.logger === logger));
  const asWritten = loggers.map((logger) =>
    loggerSeries(logger, read.filter((one) => one.logger === logger).map(({ file }) => file))
  );
  const series = asWritten.map((one, k) => {
    const others = asWritten.filter((other) => other !== one);
    // loggers named first in the map are held to be right
    const clocked = loggers[k]!.clock === null
      ? onTrueClock(one, others)
      : withOffset(one, asWritten.slice(0, k));
    return screenSeries(withJumps(clocked, others), others);
  });
  const plan = commonStep(series, options.step);
  const bare: Log = {
    ...plan,
    channels: series.flatMap((one) => onCommonStep(one, plan)),
    findings: [],
    files: read.map(({ logger, file }) => fileOf(logger.name, file)),
    named: read.flatMap(({ file }) => file.names.runs.toSorted((a, b) => a.fromLine - b.fromLine)),
    untested: [],
  };
  const told = series.flatMap(({ findings }) => findings);
  const flagged = withClockFlags(bare, told);
  return findFaults({ ...flagged, findings: [...told, ...gapFindings(bare)] });
}

function noLogger(file: string, map: LogMap): InputError {
  const known = map.loggers.map(({ name, files }) => `${name} (${files.join(", ") || "any file"})`);
  return new InputError(
    `Cannot tell which logger wrote ${file}: expected one of ${known.join("; ")}; name the file ` +
      "under files of one logger",
    { file: map.file },
  );
}

function fileOf(logger: string, { file, clock, names }: LoggerFile): LogFile {
  // doubled rows and rows of a lost clock were read first and named then
  const rows = clock.length + names.beforeReading;
  return { file, logger, rows, read: rows - names.count, named: names.count };
}

/** The series with a finding about its clock, from its first reading to its last. */
function toldOffset(series: LoggerSeries, message: string): LoggerSeries {
  return told(series, {
    kind: "clockOffset",
    channel: series.logger,
    from: series.times[0]!,
    to: series.times.at(-1)! + series.interval,
    message,
  });
}

/** A logger whose clock is to be found: moved to the time of the others. */
function onTrueClock(series: LoggerSeries, others: readonly LoggerSeries[]): LoggerSeries {
  const found = clockOffset(series, others);
  if (found === null) {
    return toldOffset(
      series,
      `The clock of logger "${series.logger}" could not be found: no other logger sees the same air ` +
        "or sun; its times are taken as written",
    );
  }
  return toldOffset(
    { ...series, times: series.times.map((time) => time - found.ahead) },
    `The clock of logger "${series.logger}" is ${minutes(found.ahead)} ahead by ` +
      `"${found.witness}"; taken off`,
  );
}

function withOffset(series: LoggerSeries, others: readonly LoggerSeries[]): LoggerSeries {
  const found = clockOffset(series, others);
  const coarse = Math.max(series.interval, ...others.map(({ interval }) => interval));
  if (found === null || !isOff(found, coarse)) return series;
  return toldOffset(
    series,
    `The clock of logger "${series.logger}" seems ${minutes(found.ahead)} ahead by ` +
      `"${found.witness}": check timeZone, stamp and clock in the log map`,
  );
}

function told(series: LoggerSeries, finding: Finding): LoggerSeries {
  return { ...series, findings: [...series.findings, finding] };
}

function withJumps(series: LoggerSeries, others: readonly LoggerSeries[]): LoggerSeries {
  const known = series.findings.filter(({ kind }) => kind === "daylightSaving");
  const jumps = clockJumps(series, others).filter(({ at }) =>
    !known.some(({ from, to }) => Math.abs(from - at) < 7200 || Math.abs(to - at) < 7200)
  );
  return { ...series, findings: [...series.findings, ...clockFindings(series, jumps)] };
}

/** Flags the channels of loggers whose clock is in doubt. */
function withClockFlags(log: Log, findings: readonly Finding[]): Log {
  const doubts = findings.filter(({ kind }) => kind === "clock" || kind === "daylightSaving");
  return {
    ...log,
    channels: log.channels.map((channel) => {
      const own = doubts.filter((one) => one.channel === channel.sensor.logger);
      if (own.length === 0) return channel;
      const flags = channel.flags.map((bits, step) => {
        const time = log.start + step * log.step;
        const meant = own.some(({ from, to }) => time + log.step > from && time < to);
        return meant ? bits | LOG_FLAGS.clock : bits;
      });
      return { ...channel, flags };
    }),
  };
}

function minutes(seconds: number): string {
  return `${showNumber(seconds / 60, 1)} min`;
}
