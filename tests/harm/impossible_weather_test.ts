import { assert, assertEquals, assertRejects } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { loadClimateFile } from "winterground/study/file/climate_source.ts";
import { PLAIN_COLUMNS, plainYear } from "../harness/climate_files.ts";
import { inTemporary } from "../harness/in_temporary.ts";

const COLUMNS = PLAIN_COLUMNS +
  `  dewPoint: {column: dew, unit: degC}
  windSpeed: {column: wind, unit: m/s}
`;

interface Row {
  readonly temperature: number;
  readonly humidity: number;
  readonly global: number;
  readonly dew: number;
  readonly wind: number;
}

/** A plausible year with dew point and wind, each row changed. */
function rows(change: (row: Row) => Partial<Row> = () => ({})): string[] {
  return plainYear().map((line, index) => {
    if (index === 0) return `${line},dew,wind`;
    const [date, time, ...numbers] = line.split(",");
    const [temperature, humidity, global] = numbers.map(Number) as [number, number, number];
    const row = {
      temperature,
      humidity,
      global,
      dew: temperature - 5,
      wind: 2 + Math.sin(index / 7),
    };
    const made = { ...row, ...change(row) };
    return [date, time, made.temperature, made.humidity, made.global, made.dew, made.wind].join();
  });
}

async function load(lines: readonly string[], columns = COLUMNS) {
  return await inTemporary(async (folder) => {
    await Deno.writeTextFile(`${folder}/year.csv`, lines.join("\n") + "\n");
    await Deno.writeTextFile(`${folder}/columns.yaml`, columns);
    return (await loadClimateFile(`${folder}/year.csv`, `${folder}/columns.yaml`)).year;
  });
}

async function refused(lines: readonly string[], columns?: string): Promise<string> {
  const error = await assertRejects(() => load(lines, columns), InputError);
  return error.message.split("\n").map((line) => line.replace(/^.*\/(?=[a-z]+\.(csv|yaml))/, ""))
    .join("\n");
}

Deno.test("a year with dew point and wind is read", async () => {
  // Property: the base of the cases below is itself accepted
  assertEquals((await load(rows())).windSpeed.length, 8760);
});

/** Weather that is none, the column that is named, what is said, and the word that accepts it. */
const CASES: readonly [
  name: string,
  change: (row: Row) => Partial<Row>,
  column: string,
  says: RegExp,
  word: string | null,
][] = [
  [
    "temperature and dew point swapped",
    ({ temperature, dew }) => ({ temperature: dew, dew: temperature }),
    "dew",
    /above the dry bulb in 8760 of 8760 hours.*swapped/,
    null,
  ],
  [
    "a dew point above the dry bulb all year",
    ({ temperature }) => ({ dew: temperature + 3 }),
    "dew",
    /above the dry bulb in 8760 of 8760 hours/,
    null,
  ],
  ["no wind all year", () => ({ wind: 0 }), "wind", /is 0 m\/s in all .*hours/, "no wind"],
  [
    "negative radiation every night",
    ({ global }) => ({ global: global === 0 ? -15 : global }),
    "global",
    /[-−]15\sW\/m² at night/,
    "negative nights",
  ],
  [
    "one temperature all year",
    () => ({ temperature: 7, dew: 2 }),
    "temperature",
    /is 7 degC in all 8760 hours/,
    "one value",
  ],
  [
    "one humidity all year",
    () => ({ humidity: 70 }),
    "humidity",
    /is 0.7 in all 8760 hours/,
    "one value",
  ],
  ["one wind all year", () => ({ wind: 3 }), "wind", /is 3 m\/s in all 8760 hours/, "one value"],
  [
    "no sun all year",
    () => ({ global: 0 }),
    "global",
    /totals 0.0\skWh\/m² in the year/,
    "no sun",
  ],
  [
    "radiation in kW/m² called W/m²",
    ({ global }) => ({ global: global / 1000 }),
    "global",
    /totals 1.3\skWh\/m² in the year.*unit/,
    "no sun",
  ],
];

for (const [name, change, column, says, word] of CASES) {
  Deno.test(`${name}: refused with file and column, or accepted by a word of the columns file`, async () => {
    // Property: impossible weather never passes silently
    const message = await refused(rows(change));
    assert(message.startsWith(`year.csv:2 (column "${column}"): `), message);
    assert(says.test(message), message);
    if (word === null) {
      assert(!message.includes("accept:"), message);
      return;
    }
    assert(message.includes(`accept: [${word}]`), message);
    const year = await load(rows(change), `accept: [${word}]\n${COLUMNS}`);
    assertEquals(year.dryBulb.length, 8760);
    assert(year.notices.some(({ text }) => text.includes(word)), "the reader is told");
  });
}

Deno.test("a small offset of the sensor at night and dew points rounded up are weather", async () => {
  // Property: what good sensors give is read
  const small = ({ global, temperature }: Row) => ({
    global: global === 0 ? -4 : global,
    dew: Math.round(temperature * 10) % 10 === 0 ? temperature + 0.5 : temperature - 1,
  });
  assertEquals((await load(rows(small))).dryBulb.length, 8760);
});

Deno.test("a time offset of more than a day and an unknown word are refused with their line", async () => {
  // Property: a slip of the columns file is not followed
  const offset = COLUMNS.replace("  stamp: start", "  stamp: start\n  offset: 99 h");
  const message = await refused(rows(), offset);
  assert(/^columns\.yaml:5: /.test(message) && message.includes("-24 h to 24 h"), message);
  const word = await refused(rows(), `accept: [anything]\n${COLUMNS}`);
  assert(/^columns\.yaml:1: /.test(word) && word.includes("no wind"), word);
});
