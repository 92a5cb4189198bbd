// Property: inputs that the attack found are read or refused in plain words, and soon.
import { assert, assertEquals, assertRejects, assertThrows } from "@std/assert";
import { join } from "node:path";
import { InputError } from "winterground/basics/mod.ts";
import { readNormals } from "winterground/climate/mod.ts";
import { layoutPvgis } from "winterground/climate/read/pvgis.ts";
import { parseColumns } from "winterground/climate/read/columns_file.ts";
import { readCommandLine } from "winterground/commands/command_line.ts";
import { readGreenhouseLog } from "winterground/measured/mod.ts";
import { openStudyText } from "winterground/study/mod.ts";
import { checkStudyText } from "winterground/study/file/check_study.ts";
import { findManifest } from "winterground/study/sweep/mod.ts";
import { PLAIN_COLUMNS } from "../harness/climate_files.ts";
import { inTemporary } from "../harness/in_temporary.ts";

const NORMALS = new URL("../../data/climates/aldersett_normals.csv", import.meta.url);

function refusal(work: () => unknown): string {
  return assertThrows(work, InputError).message;
}

Deno.test("an offset of the radiation by more than its hour is refused with its line", () => {
  const text = (offset: string) =>
    `Latitude (decimal degrees): 45\nLongitude (decimal degrees): 8\nElevation (m): 250\n` +
    `Irradiance Time Offset (h): ${offset}\ntime(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP\n` +
    "20180101:0000,2,94,0,0,0,283,0.75,257,99870\n";
  assertEquals(layoutPvgis(text("0.1761"), "a.csv").radiationMoment, 0.1761);
  for (const offset of ["1e999", "99", "-1.5"]) {
    const message = refusal(() => layoutPvgis(text(offset), "a.csv"));
    assert(message.startsWith("a.csv:4: Cannot use the Irradiance Time Offset"), message);
  }
});

Deno.test("a hundred thousand digits in a cell are refused with its line", () => {
  // more than a minute before: the pattern of a number took the square of its length
  const text = Deno.readTextFileSync(NORMALS).replace("-17.0", `${"7".repeat(100_000)}x`);
  assert(refusal(() => readNormals(text, "a.csv")).includes('found "777'));
});

Deno.test("a format of time that is no format is refused with its line", () => {
  const text = PLAIN_COLUMNS.replace("YYYY-MM-DD", "-".repeat(100_000));
  assert(refusal(() => parseColumns(text, "a.yaml")).includes("expected at most 60 characters"));
});

Deno.test("fifty thousand repeated keys are told by the first", () => {
  const keys = Array(50_000).fill("k").join(",");
  assert(
    refusal(() => parseColumns(`place: {${keys}}\n`, "a.yaml")).includes(
      'the key "k" appears twice',
    ),
  );
  const lines = refusal(() => checkStudyText(`place: {${keys}}\n`, "a.yaml")).split("\n");
  assertEquals(lines.length, 20);
});

Deno.test("brackets within brackets are refused with their line before the parser sees them", () => {
  for (const [open, close] of [["[", "]"], ["{a: ", "}"], ["- ", ""], ["[", ""]] as const) {
    const text = `study:\n  name: ${open.repeat(100_000)}1${close.repeat(100_000)}\n`;
    assert(/^a\.yaml:2/.test(refusal(() => checkStudyText(text, "a.yaml"))));
    assert(/^a\.yaml:2/.test(refusal(() => parseColumns(text, "a.yaml"))));
  }
});

Deno.test("a damaged list of a sweep is refused, whatever it holds", () =>
  inTemporary(async (folder) => {
    const made = { study: "a", sweep: "b", library: "c" };
    for (
      const text of [
        "null",
        "3",
        "[]",
        "{}",
        JSON.stringify({ made }),
        JSON.stringify({ made, rows: 3, figures: [{}] }),
      ]
    ) {
      await Deno.writeTextFile(join(folder, "sweep.json"), text);
      await assertRejects(() => findManifest(folder, made), InputError, "sweep.json: Cannot read");
    }
  }));

Deno.test("a word of a command line longer than any path is refused", () => {
  const spec = { name: "study", summary: "", args: "", minArgs: 0, maxArgs: 1, options: [] };
  for (const word of ["x", "-", "-x", "--x="]) {
    const long = word.repeat(100_000);
    assert(
      refusal(() => readCommandLine(spec, [long])).includes(`it has ${long.length} characters`),
    );
  }
});

Deno.test("a log with two columns of one name is refused with its line", () => {
  const message = refusal(() => readGreenhouseLog("Date,Tout,Tout\n1,2,3\n", "Date,Tair\n1,2\n"));
  assertEquals(
    message,
    'weather.csv:1: Cannot read the log: two columns are named "Tout"; keep one',
  );
});

Deno.test("a hundred thousand signs that cannot stand there are told by the first, keys within keys with their file", () => {
  // seven seconds before: the parser made as many faults; the other filled its stack
  for (const sign of [",", '"', "a: ", "? ", "&a ", "!t ", "]", "} "]) {
    const text = `study: {name: small}\nworth: {${sign.repeat(100_000 / sign.length)}winters: 0}\n`;
    for (const read of [checkStudyText, parseColumns]) {
      const message = refusal(() => read(text, "a.yaml"));
      assert(/^a\.yaml:[12]:/.test(message), message.slice(0, 200));
      assertEquals(message.split("\n").length, 1, message.slice(0, 500));
      assert(!/: $/.test(message), message);
    }
  }
});

Deno.test("a file name that ends in thousands of zeros is told in its readable part", async () => {
  const text = `place: {name: a}\nclimate: {normals: "a${"\\0".repeat(4000)}"}\n`;
  const { message } = await assertRejects(() => openStudyText(text, "a.yaml"), InputError);
  for (const line of message.split("\n")) assert(line.length < 4500, `${line.length} signs`);
  assert(message.includes("a\\u0000\\u0000"), message.slice(0, 200));
});
