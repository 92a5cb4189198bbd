import { assert, assertEquals, assertRejects } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { summariseClimate } from "winterground/climate/mod.ts";
import { loadClimateFile } from "winterground/study/file/climate_source.ts";
import { PLAIN_COLUMNS, plainYear } from "../harness/climate_files.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";

/** Reads rows through a columns file. */
async function load(rows: readonly string[], columns: string = PLAIN_COLUMNS) {
  return await inTemporary(async (folder) => {
    await Deno.writeTextFile(`${folder}/year.csv`, rows.join("\n") + "\n");
    await Deno.writeTextFile(`${folder}/columns.yaml`, columns);
    return await loadClimateFile(`${folder}/year.csv`, `${folder}/columns.yaml`);
  });
}

/** The message with which rows are refused, folder left out. */
async function refused(rows: readonly string[], columns?: string): Promise<string> {
  const error = await assertRejects(() => load(rows, columns), InputError);
  return error.message.split("\n").map((line) => line.replace(/^.*\/(?=[a-z]+\.(csv|yaml))/, ""))
    .join("\n");
}

const YEAR = plainYear();

Deno.test("a sound year is read", async () => {
  // Property: the base of the cases below is itself accepted
  const { year } = await load(YEAR);
  assertEquals(year.dryBulb.length, 8760);
  assert(Math.abs(summariseClimate(year).meanTemperature - 5) < 0.5);
});

Deno.test("text in a number column names line and column", async () => {
  // Property: never read as 0 or NaN
  const rows = [...YEAR];
  rows[100] = rows[100]!.replace(/,([^,]*),([^,]*),([^,]*)$/, ",warm,$2,$3");
  const message = await refused(rows);
  assert(message.startsWith("year.csv:101"), message);
  assert(message.includes("warm"), message);
});

Deno.test("a column that is not there names the columns there are", async () => {
  // Property: a wrong head is not guessed
  const message = await refused(YEAR, PLAIN_COLUMNS.replace("column: global", "column: sunshine"));
  assert(message.includes("sunshine") && message.includes("temperature"), message);
});

Deno.test("a wrong unit in the columns file is refused with its line", async () => {
  // Property: a temperature is not read in kg
  const message = await refused(YEAR, PLAIN_COLUMNS.replace("unit: degC", "unit: kg"));
  assert(/^columns\.yaml:\d+/.test(message), message);
});

Deno.test("an unknown key of the columns file is refused with its line", async () => {
  // Property: misspelled keys never pass silently
  const message = await refused(YEAR, PLAIN_COLUMNS.replace("header: true", "heading: true"));
  assert(/^columns\.yaml:1/.test(message) && message.includes("heading"), message);
});

Deno.test("a month missing is refused and named", async () => {
  // Property: a year has 8760 hours
  const rows = YEAR.filter((row) => !row.startsWith("2001-06-"));
  const message = await refused(rows);
  assert(message.startsWith("year.csv"), message);
  assert(/June|1 Jun|31 May|2001-06|720/.test(message), message);
});

Deno.test("doubled hours are refused with the line of the second", async () => {
  // Property: no hour counts twice
  const rows = [...YEAR.slice(0, 50), YEAR[49]!, ...YEAR.slice(50)];
  const message = await refused(rows);
  assert(/^year\.csv:(50|51)\b/.test(message), message);
});

Deno.test("a leap year of 8784 rows is refused with the way out", async () => {
  // Property: 29 February is left out only when asked for
  const rows = [YEAR[0]!];
  for (let hour = 0; hour < 8784; hour++) {
    const moment = new Date(Date.UTC(2004, 0, 1, hour)).toISOString();
    rows.push(`${moment.slice(0, 10)},${moment.slice(11, 16)},${YEAR[hour % 8760 + 1]!.slice(17)}`);
  }
  const message = await refused(rows);
  assert(/29 February|8784/.test(message) && message.includes("leapDay"), message);
  const { year } = await load(rows, `leapDay: leave out\n${PLAIN_COLUMNS}`);
  assertEquals(year.dryBulb.length, 8760);
});

Deno.test("Fahrenheit given as Celsius is told in a notice", async () => {
  // Property: a year far too warm for its latitude does not pass without a word
  const fahrenheit = YEAR.map((row, index) => {
    if (index === 0) return row;
    const cells = row.split(",");
    cells[2] = (Number(cells[2]) * 1.8 + 32).toFixed(1);
    return cells.join(",");
  });
  const { year } = await load(fahrenheit);
  const words = year.notices.map(({ text }) => text).join("\n");
  assert(/fahrenheit|degF/i.test(words), words);
});

Deno.test("an open quotation mark is told with its line, without the rest of the file", async () => {
  // Property: one short message, not thousands of swallowed lines
  const rows = YEAR.map((row, index) => index === 500 ? `"${row}` : row);
  const message = await refused(rows);
  assert(
    message.startsWith("year.csv:501: Cannot read the line: it has an unclosed quotation mark"),
    message,
  );
  assert(message.length < 200, message);
});

Deno.test("a broken columns file is told with its line and in plain words", async () => {
  // Property: bad input
  for (
    const [text, words] of [
      [PLAIN_COLUMNS.replace("header: true", "header: *nowhere"), "columns.yaml:1: Cannot read"],
      [
        PLAIN_COLUMNS.replace("latitude: 47", "latitude: 95"),
        "place.latitude: expected at most 90",
      ],
      ["- one\n", "columns.yaml:1: Cannot use the columns file: expected keys with values"],
      [
        `${PLAIN_COLUMNS}header: true\n`,
        'columns.yaml:12:1: Cannot read the columns file: the key "header" appears twice',
      ],
      [PLAIN_COLUMNS.replace("unit: degC", "unit: kg"), "41 degF; found kg"],
    ] as const
  ) {
    const message = await refused(YEAR, text);
    assert(message.includes(words) && !message.includes("at line"), message);
  }
});

Deno.test("missing, empty, folder and unknown layout are told in plain words", async () => {
  // Property: InputError with the file, nothing else
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(`${folder}/empty.csv`, "");
    await Deno.writeTextFile(`${folder}/strange.csv`, "a;b\n1;2\n");
    for (
      const [name, words] of [
        ["none.csv", "no such file"],
        ["", "folder"],
        ["empty.csv", "empty"],
        ["strange.csv", "columns file"],
      ]
    ) {
      const error = await assertRejects(
        () => loadClimateFile(`${folder}/${name}`, undefined),
        InputError,
      );
      assert(error.message.includes(words!), error.message);
    }
  });
});

Deno.test("the climate command prints a summary, and faults on stderr with exit status 2", async () => {
  // Property: exit status 0 done, 2 bad input; standard output stays empty on a fault
  await inTemporary(async (folder) => {
    await Deno.writeTextFile(`${folder}/year.csv`, YEAR.join("\n"));
    await Deno.writeTextFile(`${folder}/columns.yaml`, PLAIN_COLUMNS);
    await Deno.writeTextFile(`${folder}/bad.csv`, YEAR.slice(0, 3000).join("\n"));
    const run = async (...words: string[]) => {
      const { code, stdout, stderr } = await task("climate", words, folder).output();
      const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes);
      return { code, stdout: text(stdout), stderr: text(stderr) };
    };
    const [good, bad, wrong] = await Promise.all([
      run("year.csv", "--columns", "columns.yaml"),
      run("bad.csv", "--columns", "columns.yaml"),
      run("year.csv", "--colums", "columns.yaml"),
    ]);
    assertEquals(good.code, 0, good.stderr);
    assert(good.stdout.includes("global radiation"), good.stdout);
    assertEquals([bad.code, bad.stdout], [2, ""]);
    assert(bad.stderr.includes("bad.csv"), bad.stderr);
    assertEquals([wrong.code, wrong.stdout], [2, ""]);
    assert(wrong.stderr.includes("--columns"), wrong.stderr);
  });
});
