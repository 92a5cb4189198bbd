/** Logs of a built house: channels on one common step, with what was found wrong in them. @module */
import type { Quantity } from "./quantities.ts";

export type { Quantity } from "./quantities.ts";

/** One sensor: what it measures, where, how well. */
export interface Sensor {
  /** unique in a log */
  readonly name: string;
  /** name of the logger, and so of the clock, that it hangs on */
  readonly logger: string;
  /** what it measures */
  readonly quantity: Quantity;
  /**
   * where: "inside", "outside", "ridge", "intake", "outlet", "soil", "tube 3", "control house" or
   * another word; sensors of one quantity in one zone are neighbours that ought to agree
   */
  readonly zone: string;
  /** m below the floor; soil probes */
  readonly depth?: number;
  /** m along the tubes from the middle of the field, towards the return header */
  readonly x?: number;
  /** m across the tubes from the middle of the field */
  readonly y?: number;
  /** standard uncertainty in the quantity's SI unit; temperatures in K */
  readonly accuracy: number;
  /** share of the reading that is added to it in squares, as for air flow by traverse */
  readonly relativeAccuracy?: number;
  /** name of a bath or a batch: sensors with the same word were calibrated together and err together */
  readonly correlatedWith?: string;
}

/** Bits of a channel's flags; a step may carry several. */
export const LOG_FLAGS = {
  /** no value, one that cannot be read, or one that cannot be true */
  gap: 1,
  /** a lone value far from those before and after */
  spike: 2,
  /** the same value for far longer than this channel keeps one */
  stuck: 4,
  /** warmer than its neighbour where the sun shines */
  sunHit: 8,
  /** stands where another probe ought to */
  swapped: 16,
  /** humidity pinned at saturation: wick dry or sensor wet */
  pinned: 32,
  /** walks away from its neighbour */
  drift: 64,
  /** its logger's clock jumped, or changed to daylight-saving time */
  clock: 128,
} as const;

/** Name of a flag. */
export type LogFlag = keyof typeof LOG_FLAGS;

/** The readings of one sensor on the common step. */
export interface Channel {
  /** what the values are */
  readonly sensor: Sensor;
  /** SI, temperatures in degC, shares 0 to 1: mean of each step; NaN in a gap */
  readonly values: Float64Array;
  /** bits of {@link LOG_FLAGS} by step; 0 where nothing is wrong */
  readonly flags: Uint8Array;
}

/** What a finding is about. */
export type FindingKind =
  | LogFlag
  | "unreadable"
  | "outOfRange"
  | "doubledRows"
  | "daylightSaving"
  | "clockOffset";

/** A fault that was found, named with channel and time. */
export interface Finding {
  /** what it is */
  readonly kind: FindingKind;
  /** name of the sensor, or of the logger where all its channels are meant */
  readonly channel: string;
  /** s since 1970 UTC, start of the first step meant */
  readonly from: number;
  /** s since 1970 UTC, end of the last step meant */
  readonly to: number;
  /** what was found and what to do, for the reader */
  readonly message: string;
}

/** Rows of a file that were not read, next to each other and for one reason. */
export interface NamedRows {
  /** file they stand in */
  readonly file: string;
  /** line of the first one, from 1 */
  readonly fromLine: number;
  /** line of the last one, from 1 */
  readonly toLine: number;
  /** number of them */
  readonly rows: number;
  /** why the first was not read, with its line and column */
  readonly message: string;
}

/** What became of the rows of one file: `rows = read + named`. */
export interface LogFile {
  /** its name */
  readonly file: string;
  /** name of the logger that wrote it */
  readonly logger: string;
  /** number of rows below the head, empty lines not counted */
  readonly rows: number;
  /** number of rows whose values are in the log */
  readonly read: number;
  /** number of rows that are not, all of them in `Log.named` */
  readonly named: number;
}

/** Channels on one step, and all that was found wrong. */
export interface Log {
  /** s since 1970 UTC, start of the first step */
  readonly start: number;
  /** s */
  readonly step: number;
  /** number of steps */
  readonly count: number;
  /** every channel has `count` values */
  readonly channels: readonly Channel[];
  /** faults by time */
  readonly findings: readonly Finding[];
  /** file by file, what was read */
  readonly files: readonly LogFile[];
  /** rows that were not read */
  readonly named: readonly NamedRows[];
  /** checks that could not be made with these channels, and what they need */
  readonly untested: readonly string[];
}
