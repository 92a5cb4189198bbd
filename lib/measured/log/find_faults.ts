/** Faults that only show when channels are held against each other. @module */
import { drift } from "./faults/drift.ts";
import type { Fault } from "./faults/fault.ts";
import { pinned } from "./faults/pinned.ts";
import { sunHit } from "./faults/sun_hit.ts";
import { swapped } from "./faults/swapped.ts";
import { type Finding, type Log, LOG_FLAGS } from "./types.ts";

/**
 * Flags and names sun-hit sensors, swapped probes, pinned humidity and drift.
 *
 * @param log with gaps, spikes and stuck values flagged; its findings are kept
 * @returns the same log with flags and findings, by time, and with what could not be looked at
 */
export function findFaults(log: Log): Log {
  const swaps = swapped(log);
  const afterSwaps = flagged(log, swaps.faults);
  const checks = [swaps, pinned(log), sunHit(log), drift(afterSwaps)];
  const faults = checks.flatMap((one) => one.faults);
  const findings = [...log.findings, ...faults.map((fault) => finding(log, fault))];
  return {
    ...flagged(log, faults),
    findings: findings.toSorted((a, b) => a.from - b.from || a.to - b.to),
    untested: [...log.untested, ...checks.flatMap(({ untested }) => untested)],
  };
}

function finding({ start, step }: Log, { kind, channel, from, to, message }: Fault): Finding {
  return { kind, channel, from: start + from * step, to: start + to * step, message };
}

/** The log with the steps of faults flagged. */
function flagged(log: Log, faults: readonly Fault[]): Log {
  if (faults.length === 0) return log;
  return {
    ...log,
    channels: log.channels.map((channel) => {
      const own = faults.filter(({ channels }) => channels.includes(channel.sensor.name));
      if (own.length === 0) return channel;
      const flags = channel.flags.slice();
      for (const { flag, from, to, only } of own) {
        for (let step = from; step < to; step++) {
          if (only === undefined || only(step)) flags[step]! |= LOG_FLAGS[flag];
        }
      }
      return { ...channel, flags };
    }),
  };
}
