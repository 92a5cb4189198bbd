/** The faults planted in the made-up winter. @module */
import { DAY, HOUR } from "../../basics/mod.ts";
import type { FindingKind } from "../log/types.ts";

/** A planted fault: in which column, from when to when. */
export interface PlantedFault {
  /** what a reader of the log should find */
  readonly kind: FindingKind;
  /** name of the sensor, or of the logger */
  readonly channel: string;
  /** s since the log began, true time */
  readonly from: number;
  /** s since the log began, true time */
  readonly to: number;
  /** how large: K, shares of 1, s of the clock; see each */
  readonly size: number;
  /** the other sensor of a swap */
  readonly other?: string;
}

const day = (count: number, hour = 0) => count * DAY + hour * HOUR;

/** Every fault of the demo's winter; days are counted from its first, 1 November. */
export const PLANTED: readonly PlantedFault[] = [
  { kind: "spike", channel: "outdoors", from: day(12, 3), to: day(12, 3.5), size: 14 },
  { kind: "spike", channel: "outdoors", from: day(77, 14), to: day(77, 14.5), size: -17 },
  { kind: "spike", channel: "intake", from: day(48, 21), to: day(48, 21.25), size: 11 },
  { kind: "stuck", channel: "store_2", from: day(60), to: day(67), size: 0 },
  { kind: "sunHit", channel: "outdoors_2", from: day(0), to: day(151), size: 6 },
  { kind: "swapped", channel: "garden_2", other: "garden_3", from: day(95), to: day(151), size: 0 },
  { kind: "pinned", channel: "house_rh", from: day(30), to: day(38), size: 1 },
  { kind: "drift", channel: "house_2", from: day(40), to: day(151), size: 3 },
  { kind: "gap", channel: "air", from: day(100), to: day(102, 7), size: 0 },
  { kind: "clock", channel: "house", from: day(121, 9), to: day(151), size: 37 * 60 },
  { kind: "daylightSaving", channel: "soil", from: day(127, 2), to: day(151), size: HOUR },
];
