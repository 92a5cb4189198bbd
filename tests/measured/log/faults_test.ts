// Property: every planted fault of a made log is found and named with its channel and time, and
// nothing is found in a clean one.
import { assert, assertEquals } from "@std/assert";
import {
  type Finding,
  type FindingKind,
  LOG_FLAGS,
  parseLogMap,
  readLog,
} from "../../../lib/measured/mod.ts";
import { MADE_START, type MadeFault, madeLog, madeMap } from "../../support/made_log.ts";

const DAY = 86400;
const MAP = parseLogMap(madeMap(), "made.yaml");
const SEEDS = 10;

function findingsOf(seed: number, fault?: MadeFault, days = 40): readonly Finding[] {
  return readLog(madeLog(seed, days, fault), MAP, { step: 3600 }).findings;
}

function say(findings: readonly Finding[]): string {
  return findings.map((one) =>
    `${one.kind} ${one.channel} day ${((one.from - MADE_START) / DAY).toFixed(2)} to ${
      ((one.to - MADE_START) / DAY).toFixed(2)
    }: ${one.message}`
  ).join("\n");
}

Deno.test("readLog(): a clean log has no findings, whatever the winter", () => {
  for (let seed = 1; seed <= 40; seed++) {
    const log = readLog(madeLog(seed, 30), MAP);
    assertEquals(say(log.findings), "", `seed ${seed}`);
    for (const { flags, sensor } of log.channels) {
      assert(flags.every((bits) => bits === 0), `flags of ${sensor.name}`);
    }
  }
});

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

const PLANTED: readonly Planted[] = [
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

for (const planted of PLANTED) {
  Deno.test(`readLog(): finds ${planted.name}, and nothing else`, () => {
    for (let seed = 1; seed <= SEEDS; seed++) {
      const log = readLog(madeLog(seed, 40, planted.fault), MAP, { step: 3600 });
      const own = log.findings.filter((one) =>
        one.kind === planted.kind && planted.channels.includes(one.channel)
      );
      assert(own.length >= 1, `seed ${seed}: not found among\n${say(log.findings)}`);
      const from = (own[0]!.from - MADE_START) / DAY;
      const to = (own.at(-1)!.to - MADE_START) / DAY;
      const near = Math.abs(from - planted.from) <= planted.within &&
        Math.abs(to - planted.to) <= planted.within;
      assert(near, `seed ${seed}: ${say(own)}`);
      const others = log.findings.filter((one) =>
        !own.includes(one) && !(planted.beside?.includes(one.kind) ?? false)
      );
      assertEquals(say(others), "", `seed ${seed}`);
      if (planted.flagged === "") continue;
      const channel = log.channels.find(({ sensor }) => sensor.name === planted.flagged)!;
      const middle = Math.floor(
        ((planted.from + planted.to) / 2 * DAY + MADE_START - log.start) / log.step,
      );
      const near12 = channel.flags.subarray(middle - 24, middle + 24);
      assert(near12.some((bits) => bits !== 0), `seed ${seed}: no flag on ${planted.flagged}`);
      if (planted.kind in LOG_FLAGS) {
        const bit = LOG_FLAGS[planted.kind as keyof typeof LOG_FLAGS];
        assert(near12.some((bits) => (bits & bit) !== 0), `seed ${seed}: another flag`);
      }
    }
  });
}

Deno.test("readLog(): faults planted together are each found", () => {
  const together: MadeFault = {
    value: (name, time, shown, all) =>
      PLANTED.filter(({ name }) => /spike|wick|stuck soil|sun$/.test(name))
        .reduce<number | string>(
          (value, { fault }) =>
            typeof value === "string" ? value : fault.value?.(name, time, value, all) ?? value,
          shown,
        ),
  };
  for (let seed = 21; seed <= 26; seed++) {
    const found = new Set(findingsOf(seed, together).map(({ kind, channel }) => kind + channel));
    for (
      const one of [
        "spikeinside_a",
        "spikeout_b",
        "pinnedinside_rh",
        "stuckgarden_60",
        "sunHitout_b",
      ]
    ) {
      assert(found.has(one), `seed ${seed}: ${one} not among ${[...found].join(", ")}`);
    }
  }
});
