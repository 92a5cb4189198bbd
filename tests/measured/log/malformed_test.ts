// Property: a broken log is refused with its file named, or every one of its rows is read or named.
import { assert, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../../lib/basics/mod.ts";
import { parseLogMap, readLog } from "../../../lib/measured/mod.ts";
import { rowBlocks } from "../../../lib/measured/log/rows.ts";

const MAP = parseLogMap(
  `
loggers:
  house:
    time: { timeZone: UTC-6 }
    sensors:
      air: { column: air, quantity: airTemperature, unit: degF, zone: inside }
      humidity: { column: rh, quantity: relativeHumidity, unit: "%", zone: inside }
      power: { column: 4, quantity: power, unit: kW, zone: fan }
`,
  "map.yaml",
);

function plainRows(count: number): string[] {
  return Array.from({ length: count }, (_, i) => {
    const time = new Date(Date.UTC(2026, 0, 5) + i * 300_000).toISOString().slice(0, 16);
    return `${time},${(41 + 5 * Math.sin(i / 40)).toFixed(2)},${60 + (i % 7)},0.35`;
  });
}

/** One way in which a file is spoilt: changes its lines. */
const damage = fc.oneof(
  fc.record({ kind: fc.constant("text"), at: fc.nat(99), text: fc.string({ maxLength: 40 }) }),
  fc.record({ kind: fc.constant("cell"), at: fc.nat(99), text: fc.string({ maxLength: 8 }) }),
  fc.record({
    kind: fc.constantFrom("double", "swap", "cut", "quote", "heads", "blank", "wide", "late"),
    at: fc.nat(99),
    text: fc.constant(""),
  }),
);

function spoil(lines: string[], { kind, at, text }: { kind: string; at: number; text: string }) {
  const k = 1 + at % (lines.length - 1);
  const line = lines[k] ?? "";
  if (kind === "text") lines[k] = text;
  if (kind === "cell") lines[k] = line.replace(/,[^,]*/, `,${text}`);
  if (kind === "double") lines.splice(k, 0, line);
  if (kind === "swap") {
    lines.splice(
      k,
      1,
      ...[lines[k + 1], line].filter((one) => one !== undefined),
    );
  }
  if (kind === "cut") lines[k] = line.slice(0, Math.floor(line.length / 2));
  if (kind === "quote") lines[k] = line.replace(",", ',"');
  if (kind === "heads") lines.splice(k, 0, lines[0]!);
  if (kind === "blank") lines.splice(k, 0, "");
  if (kind === "wide") lines[k] = line + ",7,8,9";
  if (kind === "late") lines[k] = line.replace("2026", "1999");
}

/** Rows below the head by the plainest count there is: lines that are not empty. */
function rowsOf(text: string): number {
  return text.split(/\r\n|\r|\n/).filter((line) => line.trim() !== "").length - 1;
}

Deno.test("readLog(): 1 000 malformed logs: no crash, and read + named = rows in the file", () => {
  let [read, refused] = [0, 0];
  fc.assert(
    fc.property(
      fc.array(damage, { minLength: 1, maxLength: 12 }),
      fc.constantFrom("\n", "\r\n", "\r"),
      fc.integer({ min: 1, max: 60 }),
      (damages, newline, cut) => {
        const lines = ["time,air,rh,kw", ...plainRows(100)];
        for (const one of damages) spoil(lines, one);
        const text = lines.join(newline);
        const pieces = text.match(new RegExp(`[^]{1,${cut}}`, "g")) ?? [];
        let log;
        try {
          log = readLog([{ file: "house.csv", text: pieces }], MAP);
        } catch (error) {
          assert(error instanceof InputError, String(error));
          refused++;
          return;
        }
        read++;
        const [file] = log.files;
        assertEquals(file!.rows, rowsOf(text), "rows counted");
        assertEquals(file!.read + file!.named, file!.rows, "read and named");
        assertEquals(log.named.reduce((sum, one) => sum + one.rows, 0), file!.named, "runs");
        for (const one of log.named) {
          assert(one.message.startsWith(`house.csv:${one.fromLine}: `), one.message);
        }
      },
    ),
    { numRuns: 1000, seed: 7 },
  );
  assert(read > 900, `${read} read, ${refused} refused`);
});

Deno.test("readLog(): any text at all is read, or refused with the file's name", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 400, unit: "binary" }), (text) => {
      try {
        const log = readLog([{ file: "house.csv", text }], MAP);
        const [file] = log.files;
        assertEquals(file!.read + file!.named, file!.rows);
      } catch (error) {
        assert(error instanceof InputError, String(error));
        assert(error.message.includes("house.csv"), error.message);
      }
    }),
    { numRuns: 500, seed: 8 },
  );
});

Deno.test("readLog(): faults are told with file, row and column", () => {
  const lines = ["time,air,rh,kw", ...plainRows(100)];
  lines[10] = lines[10]!.replace(/,[^,]*,/, ",warm,");
  lines[20] = "24:00 yesterday,50,60,0.3";
  lines[30] = lines[30]! + ",extra";
  lines[40] = lines[39]!;
  lines[50] = lines[49]!.replace(/,[^,]*,/, ",44,");
  const log = readLog([{ file: "house.csv", text: lines.join("\n") }], MAP);
  const told = log.named.map(({ message }) => message);
  assert(told[0]!.startsWith("house.csv:21: Cannot read the time"), told[0]);
  assert(told[1]!.startsWith("house.csv:31: Cannot read the row: expected 4 cells, found 5"));
  assert(
    told[2]!.startsWith("house.csv:41: The time 2026-01-05 03:10 stands already in house.csv:40"),
  );
  assert(told[3]!.includes("with other readings; the first is kept"), told[3]);
  const odd = log.findings.find(({ kind }) => kind === "unreadable")!;
  assert(odd.message.startsWith('house.csv:11 (column "air"): expected a number, found "warm"'));
  assertEquals(odd.channel, "air");
});

Deno.test("readLog(): columns that are not there and files of no logger are refused", () => {
  const text = ["time,air,humid,kw", ...plainRows(5)].join("\n");
  const error = assertThrows(() => readLog([{ file: "house.csv", text }], MAP), InputError);
  assert(error.message.includes('house.csv:1: Cannot find column "rh"'), error.message);
  const two = parseLogMap(
    `
loggers:
  a: { files: a.csv, sensors: { t: { column: t, quantity: airTemperature } } }
  b: { files: b.csv, sensors: { u: { column: u, quantity: airTemperature } } }
`,
    "map.yaml",
  );
  const other = assertThrows(() => readLog([{ file: "c.csv", text }], two), InputError);
  assert(other.message.includes("Cannot tell which logger wrote c.csv"), other.message);
});

Deno.test("parseLogMap(): faults of the map are told with their lines", () => {
  const text = `loggers:
  house:
    sensors:
      air: { column: air, quantity: airTemperature, unit: kW }
      hum: { column: rh, quantity: relativeHumidity, zone: inside, accuracy: 2 K }
`;
  const error = assertThrows(() => parseLogMap(text, "map.yaml"), InputError);
  assert(error.message.includes('map.yaml:4: Cannot use unit of sensor "air"'), error.message);
  assert(error.message.includes('map.yaml:5: Cannot use accuracy of sensor "hum"'), error.message);
  const unknown = "loggers:\n  house:\n    sensors:\n      air: { col: 1 }\n";
  const known = assertThrows(() => parseLogMap(unknown, "map.yaml"), InputError);
  assert(known.message.includes("map.yaml:4"), known.message);
});

Deno.test("rowBlocks(): lines keep their numbers however the text is cut", () => {
  const text = 'a,b\r\n1,"x\ny",3\r\r\n\n4,5\n6';
  const whole = [...rowBlocks(text, ",", "f")].flatMap(({ rows, firstLine }) =>
    rows.map((cells, i) => `${firstLine + i}: ${cells.join("|")}`)
  );
  for (let cut = 1; cut < text.length; cut++) {
    const pieces = [text.slice(0, cut), text.slice(cut)];
    const cutUp = [...rowBlocks(pieces, ",", "f")].flatMap(({ rows, firstLine }) =>
      rows.map((cells, i) => `${firstLine + i}: ${cells.join("|")}`)
    );
    assertEquals(cutUp, whole, `cut at ${cut}`);
  }
});

Deno.test("readLog(): text is asked for as it is read, never much ahead, however long the log", () => {
  // the shape of memory: characters taken but not yet turned into numbers
  const ahead = (rows: number): number => {
    let [given, done, most] = [0, 0, 0];
    function* text(): Generator<string> {
      yield "time,air,rh,kw\n";
      for (let at = 0; at < rows; at += 500) {
        const lines = Array.from({ length: 500 }, (_, i) => {
          const time = new Date(Date.UTC(2026, 0, 5) + (at + i) * 60_000).toISOString();
          return `${time.slice(0, 16)},41,60,0.3`;
        });
        given += lines.length;
        most = Math.max(most, given - done);
        yield lines.join("\n") + "\n";
      }
    }
    const log = readLog([{ file: "house.csv", text: text() }], MAP, {
      step: 3600,
      progress: (_, rows) => done = rows,
    });
    assertEquals(log.files[0]!.read, rows);
    return most;
  };
  assertEquals(ahead(5_000), ahead(50_000));
  assert(ahead(5_000) <= 1000, "at most the block in hand and the next one");
});
