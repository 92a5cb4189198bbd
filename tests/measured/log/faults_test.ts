// Property: every planted fault of a made log is found and named with its channel and time, and
// nothing is found in a clean one.
import { assert, assertEquals } from "@std/assert";
import { type Finding, LOG_FLAGS, parseLogMap, readLog } from "../../../lib/measured/mod.ts";
import { MADE_START, type MadeFault, madeLog, madeMap } from "../../support/made_log.ts";
import { PLANTED } from "./planted_faults.ts";

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
