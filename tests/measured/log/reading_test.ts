// Property: units, clocks, order and means over the step are as the map says.
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../../lib/basics/mod.ts";
import {
  channelsOf,
  type Log,
  type LogMap,
  parseLogMap,
  parseSensorList,
  readLog,
  soundValues,
  writeSensorList,
} from "../../../lib/measured/mod.ts";

const START = Date.UTC(2026, 0, 5) / 1000;

function map(time: string, extra = ""): LogMap {
  return parseLogMap(
    `loggers:
  house:
    ${extra}
    time: { ${time} }
    sensors:
      air: { column: air, quantity: airTemperature, unit: degF, zone: inside, accuracy: 0.5 degF }
`,
    "map.yaml",
  );
}

const stamp = (seconds: number) =>
  new Date(seconds * 1000).toISOString().slice(0, 19).replace("T", " ");

function csv(rows: readonly (readonly [time: string, air: number | string])[]): string {
  return ["time,air", ...rows.map((row) => row.join(","))].join("\n");
}

function read(text: string, log: LogMap, step?: number): Log {
  return readLog([{ file: "house.csv", text }], log, step === undefined ? {} : { step });
}

Deno.test("readLog(): units, accuracy, zone and the end of the row's time", () => {
  const rows = [0, 1, 2, 3].map((i) => [stamp(START + i * 900), 32 + 18 * i] as const);
  const log = read(csv(rows), map("timeZone: UTC-6"));
  assertEquals(log.step, 900);
  assertEquals(log.start, START + 6 * 3600 - 900);
  [0, 10, 20, 30].forEach((value, i) =>
    assertAlmostEquals(log.channels[0]!.values[i]!, value, 1e-9)
  );
  assertAlmostEquals(log.channels[0]!.sensor.accuracy, 0.5 / 1.8, 1e-9);
  assertEquals(channelsOf(log, "airTemperature", "inside").length, 1);
});

Deno.test("readLog(): rows in any order give one log", () => {
  const rows = Array.from(
    { length: 96 },
    (_, i) => [stamp(START + i * 900), (40 + 9 * Math.sin(i / 15)).toFixed(2)] as const,
  );
  const sorted = read(csv(rows), map("timeZone: UTC+0"));
  fc.assert(
    fc.property(fc.shuffledSubarray(rows, { minLength: 96, maxLength: 96 }), (shuffled) => {
      const log = read(csv(shuffled), map("timeZone: UTC+0"));
      assertEquals(log.channels[0]!.values, sorted.channels[0]!.values);
    }),
    { numRuns: 30 },
  );
  const turned = read(csv(rows.toReversed()), map("timeZone: UTC+0"));
  assertEquals(turned.channels[0]!.values, sorted.channels[0]!.values);
  assertEquals(turned.findings.length, 0);
});

Deno.test("readLog(): means over the step keep the sum, whatever step and stamp", () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -40, max: 40 }), { minLength: 48, maxLength: 48 }),
      fc.constantFrom(1800, 3600, 7200),
      fc.constantFrom("start", "middle", "end"),
      (values, step, at) => {
        const early = { start: 0, middle: 450, end: 900 }[at]!;
        const rows = values.map((value, i) =>
          [stamp(START + i * 900 + early), String(32 + 1.8 * value)] as const
        );
        const log = read(csv(rows), map(`timeZone: UTC+0, stamp: ${at}`), step);
        const mean = log.channels[0]!.values.reduce((sum, one) => sum + one, 0) / log.count;
        const own = values.reduce((sum, one) => sum + one, 0) / values.length;
        assertAlmostEquals(mean, own, 1e-9);
        assertEquals(log.start, START);
      },
    ),
    { numRuns: 60 },
  );
});

Deno.test("readLog(): a step has a value where half of it is covered, else a flagged gap", () => {
  const rows = [0, 1, 2, 3, 4, 8, 9, 10, 11].map((i) =>
    [stamp(START + (i + 1) * 900), "50"] as const
  );
  const log = read(csv(rows), map("timeZone: UTC+0"), 3600);
  assertEquals([...log.channels[0]!.flags], [0, 1, 0]);
  assert(Number.isNaN(log.channels[0]!.values[1]!), "never filled");
  assertEquals(log.findings.map(({ kind }) => kind), ["gap"]);
  assertEquals(log.findings[0]!.from, START + 3600);
  assert(Number.isNaN(soundValues(log.channels[0]!)[1]!));
});

Deno.test("readLog(): daylight saving that the map tells of is taken out", () => {
  const times = Array.from({ length: 24 * 300 }, (_, i) => START + (i + 1) * 3600);
  // clocks of UTC-6 change on 8 March at 2:00 and on 1 November at 2:00 summer time
  const [on, off] = [Date.UTC(2026, 2, 8, 8) / 1000, Date.UTC(2026, 10, 1, 7) / 1000];
  const rows = times.map((time, i) =>
    [stamp(time - 6 * 3600 + (time >= on && time < off ? 3600 : 0)), String(40 + i % 50)] as const
  );
  const log = read(csv(rows), map("timeZone: UTC-6, daylightSaving: yes"));
  assertEquals(log.findings, []);
  assertEquals(log.files[0]!.named, 0);
  assertEquals(log.count, rows.length);
  log.channels[0]!.values.forEach((value, i) =>
    assertAlmostEquals(value, (8 + i % 50) / 1.8, 1e-9, `row ${i}`)
  );
});

/** Half-hourly rows of a clock in Europe: UTC+1, from 29 March 2026 1:00 UTC to 25 October 1:00 UTC+2. */
const [SUMMER, WINTER] = [Date.UTC(2026, 2, 29, 1) / 1000, Date.UTC(2026, 9, 25, 1) / 1000];
function european(from: number, shown: (time: number) => number) {
  return Array.from({ length: 4 * 48 }, (_, i) => {
    const time = from + i * 1800;
    return [stamp(time + shown(time)), String(40 + i / 4)] as const;
  });
}
const berlin = (time: number) => time >= SUMMER && time < WINTER ? 7200 : 3600;

Deno.test("readLog(): a clock that follows its zone by name, the skipped and the doubled hour", () => {
  // Source: IANA time zone database [iana-tz-web], Europe/Berlin: UTC+2 from the last Sunday of March
  // 1:00 UTC to that of October 1:00 UTC
  for (const change of [SUMMER, WINTER]) {
    const rows = european(change - 86400, berlin);
    for (const order of [rows, rows.toReversed()]) {
      const log = read(csv(order), map("timeZone: Europe/Berlin, stamp: start"));
      assertEquals(log.findings, []);
      assertEquals(log.files[0]!.named, 0);
      assertEquals(log.start, change - 86400);
      log.channels[0]!.values.forEach((value, i) =>
        assertAlmostEquals(value, (8 + i / 4) / 1.8, 1e-9, `row ${i}`)
      );
    }
  }
  // a log within the summer holds no change to be found in its rows
  const july = european(Date.UTC(2026, 6, 1) / 1000, berlin);
  assertEquals(
    read(csv(july), map("timeZone: Europe/Berlin, stamp: start")).start,
    Date.UTC(2026, 6, 1) / 1000,
  );
});

Deno.test("readLog(): a clock that does not follow the zone that it names is found", () => {
  const found = (from: number, shown: (time: number) => number) =>
    read(csv(european(from, shown)), map("timeZone: Europe/Berlin, stamp: start")).findings
      .filter(({ kind }) => kind === "daylightSaving");
  // never set: it shows the hour from 2:00 to 3:00 on 29 March
  const [skipped, ...none] = found(SUMMER - 86400, () => 3600);
  assertEquals(none, []);
  assertEquals(skipped!.channel, "house");
  assertEquals(skipped!.from, SUMMER + 1800);
  assert(skipped!.message.includes("between 2026-03-29 02:00 and 2026-03-29 03:00"));
  // left in summer time: it shows the hour from 2:00 to 3:00 on 25 October once
  const [once, ...other] = found(WINTER - 86400, () => 7200);
  assertEquals(other, []);
  assertEquals([once!.from, once!.to], [WINTER - 3600, WINTER]);
  assert(once!.message.includes("from 2026-10-25 02:00 to 2026-10-25 03:00 once"));
});

Deno.test("parseLogMap(): a zone that is none", () => {
  const error = assertThrows(() => map("timeZone: Europe/Winterground"), InputError);
  assert(error.message.includes("Europe/Berlin"), error.message);
  assert(error.message.includes('found "Europe/Winterground"'), error.message);
});

Deno.test("readLog(): moments that tell their distance from UTC are taken at their word", () => {
  const rows = [0, 1, 2, 3].map((i) =>
    [stamp(START + i * 900 - 6 * 3600).replace(" ", "T") + "-06:00", "50"] as const
  );
  assertEquals(read(csv(rows), map("timeZone: UTC+9")).start, START - 900);
});

Deno.test("readLog(): clocks ahead, piece by piece, and one found against a neighbour", () => {
  const course = (time: number) =>
    50 + 12 * Math.sin(2 * Math.PI * time / 86400) + 4 * Math.sin(time / 5000) +
    3 * Math.sin(time / 2111);
  const rows = (ahead: (time: number) => number) =>
    Array.from({ length: 1200 }, (_, i) => {
      const time = START + (i + 1) * 900;
      return [stamp(time + ahead(time)), course(time - 450).toFixed(2)] as const;
    });
  const change = START + 500 * 900;
  const pieces = "timeZone: UTC+0, clock: [{ from: 2026-01-01 0:00, ahead: 10 min }, " +
    `{ from: "${stamp(change)}", ahead: -5 min }]`;
  const mended = read(csv(rows((time) => time < change - 600 ? 600 : -300)), map(pieces));
  const right = read(csv(rows(() => 0)), map("timeZone: UTC+0"));
  const off = mended.channels[0]!.values.map((value, i) => value - right.channels[0]!.values[i]!)
    .filter((value) => !Number.isNaN(value) && Math.abs(value) > 0.02);
  assert(off.length <= 2, `${off.length} steps off`);
  const two = parseLogMap(
    `loggers:
  a: { files: a.csv, sensors: { ta: { column: air, quantity: airTemperature, unit: degF } } }
  b:
    files: b.csv
    time: { clock: find }
    sensors: { tb: { column: air, quantity: airTemperature, unit: degF } }
`,
    "map.yaml",
  );
  const found = readLog([
    { file: "a.csv", text: csv(rows(() => 0)) },
    { file: "b.csv", text: csv(rows(() => 1380)) },
  ], two);
  const told = found.findings.find(({ kind }) => kind === "clockOffset")!;
  const minutes = Number(/is ([\d.]+) min ahead/.exec(told.message)![1]);
  assertAlmostEquals(minutes, 23, 1);
});

Deno.test("parseSensorList(): what writeSensorList() writes is read back, and is a map", () => {
  const list = `sensor,logger,quantity,unit,zone,depth,accuracy,calibrated_with,time_zone,price
intake,duct,airTemperature,degF,intake,,0.1 K,bath,UTC-6,40
intake_rh,duct,relativeHumidity,%,intake,,2 %,,UTC-6,
flow,duct,airFlow,cfm,duct,,10 %,,UTC-6,
soil_60,soil,soilTemperature,degC,garden,0.6 m,0.2 K,,UTC-6,
`;
  const first = parseSensorList(list, "sensors.csv");
  const listed = first.loggers.flatMap((logger) =>
    logger.sensors.map((column) => ({
      column,
      timeZone: logger.timeZone,
      remarks: { price: "40" },
    }))
  );
  const second = parseSensorList(writeSensorList(listed), "again.csv");
  assertEquals(second.loggers, first.loggers);
  const text = "time,intake,intake_rh,flow\n" +
    [0, 1, 2].map((i) => `${stamp(START + i * 600)},50,80,1000`).join("\n");
  const log = readLog([{ file: "duct-2026-01.csv", text }], first);
  assertAlmostEquals(log.channels[2]!.values[0]!, 0.4719474432, 1e-9);
  assertAlmostEquals(log.channels[1]!.values[0]!, 0.8, 1e-12);
  const bad = list.replace("airFlow,cfm", "airFlow,degF").replace("0.6 m", "0.6 K");
  const error = assertThrows(() => parseSensorList(bad, "sensors.csv"), InputError);
  assert(error.message.includes('sensors.csv:4 (column "unit")'), error.message);
  assert(error.message.includes('sensors.csv:5 (column "depth")'), error.message);
});
