/** Gaps of a log, told once for a logger that was silent. @module */
import { type Finding, type Log, LOG_FLAGS } from "./types.ts";
import { roundTo } from "../../basics/round.ts";

/**
 * Gaps of every channel; those that all channels of a logger share are told in its name.
 *
 * @param log with its flags
 */
export function gapFindings(log: Log): Finding[] {
  const loggers = [...new Set(log.channels.map(({ sensor }) => sensor.logger))];
  return loggers.flatMap((logger) => {
    const channels = log.channels.filter(({ sensor }) => sensor.logger === logger);
    const silent = new Uint8Array(log.count).fill(1);
    for (const { flags } of channels) {
      for (let i = 0; i < log.count; i++) if ((flags[i]! & LOG_FLAGS.gap) === 0) silent[i] = 0;
    }
    const ofLogger = gaps(log, (i) => silent[i] === 1, logger, `Logger "${logger}" has no rows`);
    if (channels.length === 1) return ofLogger;
    const apart = channels.flatMap(({ sensor, flags }) =>
      gaps(
        log,
        (i) => silent[i] === 0 && (flags[i]! & LOG_FLAGS.gap) !== 0,
        sensor.name,
        `"${sensor.name}" has no values`,
      )
    );
    return [...ofLogger, ...together(apart, logger)];
  });
}

/** So many channels with one and the same gap are told in one finding. */
const TOGETHER = 3;

function together(apart: readonly Finding[], logger: string): Finding[] {
  const groups = Map.groupBy(apart, ({ from, to }) => `${from} ${to}`);
  return [...groups.values()].flatMap((group) => {
    if (group.length < TOGETHER) return group;
    const names = group.map(({ channel }) => `"${channel}"`).join(", ");
    const [first] = group;
    const long = /for (.*);/.exec(first!.message)?.[1] ?? "";
    return [{
      ...first!,
      channel: logger,
      message: `${names} have no values for ${long}; the gap is flagged, not filled`,
    }];
  });
}

function gaps(
  { start, step, count }: Log,
  missing: (step: number) => boolean,
  channel: string,
  words: string,
): Finding[] {
  const found: Finding[] = [];
  let from = -1;
  for (let i = 0; i <= count; i++) {
    const gap = i < count && missing(i);
    if (gap && from === -1) from = i;
    if (!gap && from !== -1) {
      const hours = (i - from) * step / 3600;
      const long = hours < 1 ? `${Math.round(hours * 60)} min` : `${roundTo(hours, 0.1)} h`;
      found.push({
        kind: "gap",
        channel,
        from: start + from * step,
        to: start + i * step,
        message: `${words} for ${long}; the gap is flagged, not filled`,
      });
      from = -1;
    }
  }
  return found;
}
