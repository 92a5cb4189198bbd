import { assert, assertEquals, assertRejects, assertThrows } from "@std/assert";
import { InputErrors } from "winterground/basics/mod.ts";
import { defaultStudyPath } from "winterground/study/file/check_study.ts";
import { FIELDS } from "winterground/study/file/fields.ts";
import { openStudy } from "winterground/study/file/open.ts";

/** Opens a study text with the demo's normals. */
async function open(text: string) {
  const folder = await Deno.makeTempDir();
  try {
    await Deno.copyFile(
      new URL("../../../data/climates/aldersett_normals.csv", import.meta.url),
      `${folder}/normals.csv`,
    );
    await Deno.writeTextFile(`${folder}/small study.yaml`, text);
    return await openStudy(`${folder}/small study.yaml`);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

const SMALLEST = `
place: {name: Somewhere, latitude: 49 deg, longitude: -100 deg, elevation: 500 m, timeZone: UTC-6}
climate: {normals: normals.csv}
house: {length: 20 m, width: 8 m}
`;

Deno.test("openStudy() gives an unchangeable study in SI", async () => {
  // Property: writing anywhere in it throws
  const study = await openStudy(defaultStudyPath());
  assertEquals(study.heading.name, "harrow-bend");
  assertEquals(study.climate.dryBulb.length, 8760);
  assertThrows(() => (study.house as { length: number }).length = 3, TypeError);
  assertThrows(() => (study.defaults as unknown[]).push(1), TypeError);
  assertThrows(() => (study as { house: unknown }).house = {}, TypeError);
});

Deno.test("openStudy() lists every default it took, each with its source", async () => {
  // Property: given keys + listed defaults = all keys that have a value
  const study = await open(SMALLEST);
  const taken = new Map(study.defaults.map((item) => [item.key, item]));
  for (const item of study.defaults) assert(item.source !== "" && item.value !== "", item.key);
  const given = [
    "place.",
    "climate.file",
    "climate.columns",
    "climate.normals",
    "climate.mendShift",
    "climate.measuredYears.",
    "fan.curves",
    "worth.prices",
    "house.length",
    "soil.layers.",
    "store.collector.",
    "store.gravelBed.",
    "measured.logMap",
    "measured.logs.",
    "measured.truth",
    "measured.plantedFaults",
    "measured.forecast",
  ];
  const open_ = [...FIELDS.keys()].filter((key) =>
    !taken.has(key) && !given.some((start) => key.startsWith(start)) && key !== "house.width" &&
    !key.startsWith("house.curtain.") && key !== "study.name" && key !== "study.title"
  );
  assertEquals(open_, []);
  assertEquals(taken.get("tubes.airFlow")?.value, "0.657 m³/s");
});

Deno.test("derived defaults follow their stated rules", async () => {
  // Property: the rules of docs/study-file.md, recomputed
  const { house, tubes, headers, fan, heading } = await open(SMALLEST);
  assertEquals(heading.name, "small-study");
  assertEquals(house.ridgeHeight, Math.round((1.8 + 4 * Math.tan(Math.PI / 6)) * 100) / 100);
  const volume = 20 * 8 * (1.8 + house.ridgeHeight) / 2;
  assertEquals(tubes.airFlow, Math.round(volume * 5 / 3600 * 1000) / 1000);
  assertEquals(tubes.count, Math.ceil(tubes.airFlow / (Math.PI / 4 * 0.102 ** 2 * 2.5)));
  assertEquals(tubes.length, 17.9);
  assertEquals(tubes.spacing, 0.4);
  const crowded = await open(`${SMALLEST}tubes: {count: 50}\n`);
  assertEquals(crowded.tubes.spacing, Math.floor(100 * (8 - 2 * (0.059 + 0.3 + 0.15)) / 24) / 100);
  assertEquals([tubes.layers, headers.groups, fan.count], [2, 2, 1]);
  assertEquals(headers.diameter, Math.round(0.102 * Math.sqrt(tubes.count / 2) * 100) / 100);
  assertEquals(fan.riserDiameter, Math.round(headers.diameter * Math.SQRT2 * 100) / 100);
  assert(fan.count >= 1);
});

Deno.test("a sensible study carries no notices of its own, an odd one says what is odd", async () => {
  // Property: usual ranges are for the unusual
  assertEquals((await open(SMALLEST)).notices, []);
  const odd = await open(
    SMALLEST.replace("width: 8 m", "width: 8 m, leakage: 6 1/h") +
      "tubes: {length: 80 m}\n",
  );
  const words = odd.notices.map(({ text }) => text).join("\n");
  assert(/house\.leakage is 6 1\/h, outside the usual 0\.1 1\/h to 3 1\/h/.test(words), words);
  assert(words.includes("tubes.length is 80 m"), words);
});

Deno.test("a place south of the equator is told what does not hold there", async () => {
  // Property: dates and checks that are made for a northern winter
  const south = SMALLEST.replace(/latitude: [^,\n]*/, "latitude: -41 deg");
  const words = (await open(south)).notices.map(({ text }) => text).join("\n");
  assert(words.includes("south of the equator"), words);
});

Deno.test("the input hash depends on the study and on its climate", async () => {
  // Property: same texts same hash, changed texts another
  const [one, again, other] = [
    await open(SMALLEST),
    await open(SMALLEST),
    await open(SMALLEST.replace("normals.csv", "normals.csv, seed: 2")),
  ];
  assertEquals(one.inputHash, again.inputHash);
  assert(one.inputHash !== other.inputHash);
  assert(/^[0-9a-f]{64}$/.test(one.inputHash));
});

Deno.test("the study hash depends on the study, not on its weather, nor on how its text is laid out", async () => {
  // Property: other weather, comments and order keep it; another house changes it
  const [one, weather, laid, other] = [
    await open(SMALLEST),
    await open(SMALLEST.replace("normals.csv", "normals.csv, seed: 2")),
    await open(
      `# a comment\r\n${SMALLEST.replace("length: 20 m, width: 8 m", "width: 8 m, length: 20 m")}`,
    ),
    await open(SMALLEST.replace("width: 8 m", "width: 9 m")),
  ];
  assertEquals([weather.studyHash, laid.studyHash], [one.studyHash, one.studyHash]);
  assert(other.studyHash !== one.studyHash);
});

/** The faults openStudy() reports for a study text, without the folder. */
async function faultsOf(text: string): Promise<readonly string[]> {
  const error = await assertRejects(() => open(text), InputErrors);
  return error.faults.map(({ message }) => message.replace(/^\S*\//, ""));
}

Deno.test("openStudy() reports missing files of fans and of climate together", async () => {
  // Property: no missing file hides another
  const faults = await faultsOf(
    SMALLEST.replace("{normals: normals.csv}", "{file: no-weather.csv, columns: no-columns.yaml}") +
      "fan: {curves: no-fans.csv}\n",
  );
  const text = faults.join("\n");
  assertEquals(faults.length, 3, text);
  for (const key of ["climate.file", "climate.columns", "fan.curves"]) {
    assert(text.includes(`named by "${key}"`), text);
  }
});

Deno.test("openStudy() reports errors of the study file beside those of the files it names", async () => {
  // Property: neither the schema, nor a rule between inputs, nor a fan id hides a missing file
  const missing = SMALLEST.replace("normals.csv", "none.csv");
  const cases: readonly (readonly [string, readonly string[]])[] = [
    [
      missing.replace("width: 8 m", "width: 8 m, colour: red") + "fan: {curves: no-fans.csv}\n",
      ['"climate.normals"', '"colour"', '"fan.curves"'],
    ],
    [
      missing.replace("width: 8 m", "width: 8 m, eaveHeight: 3 m, ridgeHeight: 2 m") +
      "fan: {curves: no-fans.csv, fan: barn-fan}\n",
      ['"climate.normals"', '"house.ridgeHeight"', '"fan.curves"'],
    ],
    [
      missing.replace("width: 8 m", "width: 8 m, eaveHeight: 3 m, ridgeHeight: 2 m") +
      "fan: {fan: barn-fan}\n",
      ['"climate.normals"', '"house.ridgeHeight"', '"fan.fan"'],
    ],
    [
      missing.replace("latitude: 49 deg", "latitude: 49 m") + "tubes: {layers: 3, count: 2}\n",
      ['"place.latitude"', '"climate.normals"'],
    ],
  ];
  for (const [study, expected] of cases) {
    const faults = await faultsOf(study);
    const text = faults.join("\n");
    assertEquals(faults.length, expected.length, text);
    for (const words of expected) assert(text.includes(words), `${words} in ${text}`);
  }
});

Deno.test("openStudy() reports bad rows of the climate beside errors of the study file", async () => {
  // Property: the weather is read even where the study file has errors
  const faults = await faultsOf(
    SMALLEST.replace("normals.csv", "small study.yaml").replace("width: 8 m", "width: 8 m, x: 1"),
  );
  const text = faults.join("\n");
  assert(text.includes('"x"'), text);
  assert(faults.length > 1, text);
});
