import Papa from "papaparse";
import { assert, assertEquals } from "@std/assert";
import { FIELDS } from "winterground/study/file/fields.ts";
import { STUDY_KEYS, STUDY_SCHEMA } from "winterground/study/file/schema.ts";
import { checkStudyText, defaultStudyPath } from "winterground/study/file/check_study.ts";
import { parseQuantity } from "winterground/units/mod.ts";
import { nearestKey } from "winterground/study/file/faults.ts";

const SMALLEST = `
place: {name: Somewhere, latitude: 45 deg, longitude: 9 deg, elevation: 200 m, timeZone: UTC+1}
climate: {normals: normals.csv}
house: {length: 20 m, width: 25 ft}
`;

Deno.test("every key of the study schema has a row in data/studies/fields.csv and the other way round", () => {
  // Property: table and schema name the same keys
  const keys = [...STUDY_KEYS].flatMap(([section, names]) =>
    section === "" ? [] : names.map((name) => `${section}.${name}`)
  );
  assertEquals(keys.sort(), [...FIELDS.keys()].sort());
});

Deno.test("every row of data/studies/fields.csv is readable and names the source of its default", () => {
  // Property: limits and defaults are quantities of the row's kind, default within limits
  for (const row of FIELDS.values()) {
    assert(row.meaning !== "", row.key);
    if (row.default !== "") assert(row.source !== "", `${row.key} has a default without a source`);
    if (row.kind === "text") continue;
    for (const limit of [row.least, row.most, row.usualLeast, row.usualMost]) {
      if (limit !== "") parseQuantity(limit, row.kind);
    }
    if (["", "none", "glazed", "unknown", "facing", "geometry", "estimate"].includes(row.default)) {
      continue;
    }
    const value = parseQuantity(row.default, row.kind);
    if (row.least !== "") assert(value >= parseQuantity(row.least, row.kind), row.key);
    if (row.most !== "") assert(value <= parseQuantity(row.most, row.kind), row.key);
  }
});

Deno.test("a study needs no more than place, climate and house size", () => {
  // Property: everything else has a default
  const study = checkStudyText(SMALLEST, "small.yaml");
  assertEquals(study.house.length, 20);
  assertEquals(Math.round(study.house.width * 1e4) / 1e4, 7.62);
  assertEquals(study.place.timeZone, 1);
  assertEquals(study.house.curtain, null);
  assertEquals(study.tubes.depth, 0.6);
  assertEquals(study.soil.waterTableDepth, null);
});

Deno.test("the demo study passes the schema in SI", async () => {
  // Property: US units in the file come out in SI
  const path = defaultStudyPath();
  const study = checkStudyText(await Deno.readTextFile(path), path);
  assertEquals(study.house.kneeWallHeight, 0.6096);
  assertEquals(Math.round(study.tubes.airFlow! * 1e4) / 1e4, 0.8023);
  assertEquals(study.store.reverse, false);
  assert(study.house.curtain !== null);
});

Deno.test("nearestKey() finds a misspelled key and offers nothing far off", () => {
  // Property: one changed, missing or swapped letter, other case, other word mark
  for (const word of ["lenght", "Length", "lengt", "lengths", "LENGTH"]) {
    assertEquals(nearestKey(word, ["length", "width", "facing"]), "length", word);
  }
  assertEquals(nearestKey("eave_height", ["eaveHeight", "ridgeHeight"]), "eaveHeight");
  assertEquals(nearestKey("colour", ["length", "width"]), undefined);
});

Deno.test("the schema takes words in place of quantities only where they mean something", () => {
  // Property: "glazed" is a wall, never a length
  const wrong = STUDY_SCHEMA.safeParse({ place: {}, climate: {}, house: { length: "glazed" } });
  assert(!wrong.success);
  assert(wrong.error.issues.some((issue) => issue.path.join(".") === "house.length"));
});

Deno.test("no row of data/studies/fields.csv has a comma that is not quoted", async () => {
  // Property: every row has as many cells as the head, so that no meaning is cut short
  const text = await Deno.readTextFile(
    new URL("../../../data/studies/fields.csv", import.meta.url),
  );
  const { data } = Papa.parse<string[]>(text.trim());
  for (const row of data) assertEquals(row.length, data[0]!.length, row.join(","));
});
