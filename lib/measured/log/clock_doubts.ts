/** Rows whose clock is in doubt, in words. @module */
import type { SummerRows } from "./clock_changes.ts";
import type { LoggerMap } from "./map.ts";
import { timeText } from "./time_text.ts";
import type { OddRows } from "./zone_rules.ts";

/** A stretch of rows whose clock is in doubt, or was mended. */
export interface ClockStretch {
  /** kind of the finding */
  readonly kind: "daylightSaving";
  /** first row */
  readonly from: number;
  /** row after the last */
  readonly to: number;
  /** a plain sentence */
  readonly message: string;
}

/** Rows in summer time of a clock that was said to have none. */
export function summerFound({ from, to }: SummerRows, logger: LoggerMap): ClockStretch {
  return {
    kind: "daylightSaving",
    from,
    to,
    message:
      `The clock of logger "${logger.name}" skips or repeats an hour as when clocks change for ` +
      "daylight saving: these rows are an hour ahead. Write daylightSaving: yes under time in " +
      "the log map, or export in standard time",
  };
}

/** Rows that the zone named for their clock does not explain. */
export function againstRules({ from, to, what, change }: OddRows, logger: LoggerMap): ClockStretch {
  const shown = (offset: number) => timeText(change.at + offset);
  const [zone, clock] = [logger.zoneRules!, `The clock of logger "${logger.name}"`];
  const message = what === "skipped"
    ? `${clock} shows times between ${shown(change.before)} and ${shown(change.after)}, which ` +
      `${zone} skips: it does not follow that zone, and these rows are in doubt. Write the ` +
      "standard time of the clock as timeZone in the log map, such as UTC+1"
    : `${clock} shows the time from ${shown(change.after)} to ${
      shown(change.before)
    } once, where ` +
      `${zone} has it twice: these rows may be of either hour, and if the clock is not set back ` +
      "all later ones are an hour off. Write the clock's distance from UTC as timeZone in the log " +
      "map, or export in standard time";
  return { kind: "daylightSaving", from, to, message };
}
