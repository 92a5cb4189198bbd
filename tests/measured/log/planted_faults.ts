/** Faults planted in made logs, one at a time. */
import type { FindingKind } from "../../../lib/measured/mod.ts";
import type { MadeFault } from "../../support/made_log.ts";

const DAY = 86400;

/** A fault, and how it must be told. */
interface Planted {
  readonly name: string;
  readonly kind: FindingKind;
  /** names a finding may have */
  readonly channels: readonly string[];
  /** days since the start: the finding must begin and end within so many days of these */
  readonly from: number;
  readonly to: number;
  readonly within: number;
  readonly fault: MadeFault;
  readonly days?: number;
  /** findings of other kinds that follow from the same fault */
  readonly beside?: readonly FindingKind[];
  readonly flagged: string;
}

const only = (
  sensor: string,
  from: number,
  to: number,
  change: (shown: number, time: number, all: Readonly<Record<string, number>>) => number | string,
): MadeFault => ({
  value: (name, time, shown, all) =>
    name === sensor && time >= from * DAY && time < to * DAY ? change(shown, time, all) : shown,
});

/** One fault of each kind, some in two ways. */
export const PLANTED: readonly Planted[] = [
  {
    name: "a spike",
    kind: "spike",
    channels: ["inside_a"],
    from: 12.5,
    to: 12.5 + 1800 / DAY,
    within: 0.01,
    fault: only("inside_a", 12.5, 12.5 + 1700 / DAY, (shown) => shown + 13),
    flagged: "",
  },
  {
    name: "a spike of two readings down",
    kind: "spike",
    channels: ["out_b"],
    from: 20.25,
    to: 20.25 + 3600 / DAY,
    within: 0.01,
    fault: only("out_b", 20.25, 20.25 + 3500 / DAY, (shown) => shown - 18),
    flagged: "",
  },
  {
    name: "a stuck soil probe",
    kind: "stuck",
    channels: ["garden_60"],
    from: 10,
    to: 20,
    within: 0.5,
    fault: only("garden_60", 10, 20, () => 47.21),
    flagged: "garden_60",
  },
  {
    name: "a stuck air probe",
    kind: "stuck",
    channels: ["inside_b"],
    from: 8,
    to: 9.5,
    within: 0.1,
    fault: only("inside_b", 8, 9.5, () => 7.4),
    flagged: "inside_b",
  },
  {
    name: "a sensor in the sun",
    kind: "sunHit",
    channels: ["out_b"],
    from: 5,
    to: 30,
    within: 6,
    fault: only("out_b", 5, 30, (shown, _, all) => shown + 6 * all.sun! / 600),
    flagged: "out_b",
  },
  {
    name: "intake and outlet swapped",
    kind: "swapped",
    channels: ["intake", "outlet"],
    from: 0,
    to: 40,
    within: 5,
    fault: {
      value: (name, _, shown, all) =>
        name === "intake" ? all.outlet! : name === "outlet" ? all.intake! : shown,
    },
    flagged: "outlet",
  },
  {
    name: "soil depths swapped from the start",
    kind: "swapped",
    channels: ["garden_30", "garden_100"],
    from: 0,
    to: 40,
    within: 1,
    fault: {
      value: (name, _, shown, all) =>
        name === "garden_30" ? all.garden_100! : name === "garden_100" ? all.garden_30! : shown,
    },
    flagged: "garden_30",
  },
  {
    name: "soil depths exchanged one day",
    kind: "swapped",
    channels: ["garden_60", "garden_100"],
    from: 22,
    to: 40,
    within: 0.2,
    fault: {
      value: (name, time, shown, all) =>
        time < 22 * DAY || !["garden_60", "garden_100"].includes(name)
          ? shown
          : name === "garden_60"
          ? all.garden_100!
          : all.garden_60!,
    },
    flagged: "garden_100",
  },
  {
    name: "a dried wick",
    kind: "pinned",
    channels: ["inside_rh"],
    from: 15,
    to: 19,
    within: 0.3,
    fault: only("inside_rh", 15, 19, () => 100),
    flagged: "inside_rh",
  },
  {
    name: "a drifting sensor",
    kind: "drift",
    channels: ["inside_b"],
    from: 10,
    to: 40,
    within: 12,
    fault: only("inside_b", 10, 40, (shown, time) => shown + 2 * (time / DAY - 10) / 30),
    flagged: "inside_b",
  },
  {
    name: "a clock that jumps ahead by 37 minutes",
    kind: "clock",
    channels: ["house"],
    from: 18.4,
    to: 40,
    within: 0.1,
    fault: { ahead: (logger, time) => logger === "house" && time >= 18.4 * DAY ? 37 * 60 : 0 },
    beside: ["gap"],
    flagged: "inside_a",
  },
  {
    name: "a clock that jumps ahead by two hours and is set right again",
    kind: "clock",
    channels: ["duct"],
    from: 12.25,
    to: 30,
    within: 0.2,
    fault: {
      ahead: (logger, time) =>
        logger === "duct" && time >= 12.25 * DAY && time < 30 * DAY ? 7200 : 0,
    },
    beside: ["gap", "doubledRows"],
    flagged: "intake",
  },
  {
    name: "daylight saving that nobody told of",
    kind: "daylightSaving",
    channels: ["soil"],
    from: 35 + 2 / 24,
    to: 40,
    within: 0.1,
    fault: {
      ahead: (logger, time) => logger === "soil" && time >= 35 * DAY + 7200 ? 3600 : 0,
    },
    beside: ["gap"],
    flagged: "garden_30",
  },
  {
    name: "a gap",
    kind: "gap",
    channels: ["duct"],
    from: 25,
    to: 27,
    within: 0.1,
    fault: { silent: (logger, time) => logger === "duct" && time >= 25 * DAY && time < 27 * DAY },
    flagged: "outlet",
  },
  {
    name: "text among numbers",
    kind: "unreadable",
    channels: ["sun"],
    from: 5.5,
    to: 5.6,
    within: 0.05,
    fault: only("sun", 5.5, 5.6, () => "ERR 7"),
    beside: ["gap"],
    flagged: "sun",
  },
  {
    name: "a broken wire that reads -127",
    kind: "outOfRange",
    channels: ["intake"],
    from: 7,
    to: 7.5,
    within: 0.05,
    fault: only("intake", 7, 7.5, () => -127),
    beside: ["gap"],
    flagged: "intake",
  },
];
