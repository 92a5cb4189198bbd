// Property: what is in the file comes out by hour; what is not is filled or refused with its line
import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import fc from "fast-check";
import { InputError } from "../../../lib/basics/mod.ts";
import { parseColumns } from "../../../lib/climate/mod.ts";
import { readForecast, yearWith } from "../../../lib/measured/mod.ts";
import { clearSkyShare, hourlySun } from "../../../lib/sun/mod.ts";
import { openSmallStudy } from "../../harness/small_study.ts";

const PLACE = { name: "Testfield", latitude: 49, longitude: -100, elevation: 500, timeZone: -6 };
const OPTIONS = { file: "forecast.csv", place: PLACE };
const HEAD = "time,temperature (degC),humidity (%),sun (W/m2),wind (m/s)";
const stamp = (hour: number) =>
  new Date(Date.UTC(2027, 0, 14) + hour * 3.6e6).toISOString().slice(0, 16).replace("T", " ");
const row = (hour: number) => `${stamp(hour)},${-10 - hour / 4},80,${hour % 24 === 12 ? 300 : 0},3`;
const rows = (count: number) => Array.from({ length: count }, (_, hour) => row(hour));

Deno.test("readForecast(): hours, units, start", () => {
  // Property: 14 January is day 13 from 0
  const found = readForecast([HEAD, ...rows(48)].join("\n"), OPTIONS);
  assertEquals([found.start, found.dryBulb.length, found.from], [13 * 24, 48, "2027-01-14 00:00"]);
  assertAlmostEquals(found.dryBulb[4]!, -11, 1e-12);
  assertAlmostEquals(found.relativeHumidity[0]!, 0.8, 1e-12);
  assertEquals([found.globalHorizontal[12], found.windSpeed[0]], [300, 3]);
  assertEquals(found.remarks, []);
  const withT = [HEAD, ...rows(24).map((one) => one.replace(" ", "T"))].join("\r\n");
  assertEquals(readForecast(withT, OPTIONS).start, 13 * 24);
});

Deno.test("readForecast(): sun from cloud cover", () => {
  // Source: Kasten & Czeplak 1980 [kasten-czeplak-1980] (from memory): 1 - 0.75 N^3.4 of clear sky
  const text = ["time,temperature (degC),humidity (%),cloud (%)"];
  for (let hour = 0; hour < 24; hour++) text.push(`${stamp(hour)},-5,70,${hour < 12 ? 0 : 100}`);
  const found = readForecast(text.join("\n"), OPTIONS);
  const sun = hourlySun(PLACE);
  const clear = (hour: number) =>
    clearSkyShare(500) * sun.extraterrestrialNormal[hour]! * sun.cosZenith[hour]!;
  assertAlmostEquals(found.globalHorizontal[11]!, clear(13 * 24 + 11), 1e-9);
  assertAlmostEquals(found.globalHorizontal[12]!, 0.25 * clear(13 * 24 + 12), 1e-9);
  assertEquals(found.globalHorizontal[0], 0);
  assertEquals(found.remarks.length, 2);
});

Deno.test("readForecast(): other heads and units by a columns file", () => {
  // Property: the climate reader's own units
  const columns = parseColumns(
    'delimiter: semicolon\ntime: {stamp: start, read: [{column: when, format: "DD.MM.YYYY HH:mm"}]}\n' +
      "columns: {dryBulb: {column: T, unit: degF}, relativeHumidity: {column: RH, unit: '%'}, " +
      "globalHorizontal: {column: S, unit: W/m2}}\n",
    "columns.yaml",
  );
  const text = ["when;T;RH;S"];
  for (let hour = 0; hour < 24; hour++) {
    text.push(`14.01.2027 ${String(hour).padStart(2, "0")}:00;14;50;0`);
  }
  const found = readForecast(text.join("\n"), { ...OPTIONS, columns });
  assertAlmostEquals(found.dryBulb[0]!, -10, 1e-9);
  assertEquals(found.windSpeed[3], 3);
});

Deno.test("readForecast(): gaps, order, cells, heads", () => {
  // Property: the fault names line and what to do
  const three = [HEAD, ...rows(48).filter((_, i) => i % 3 === 0)].join("\n");
  const found = readForecast(three, OPTIONS);
  assertEquals(found.dryBulb.length, 46);
  assertAlmostEquals(found.dryBulb[1]!, -10.25, 1e-12);
  assert(found.remarks[0]!.includes("30 hours of temperature"));
  const faults: [string, string][] = [
    ["", "it is empty"],
    [[HEAD, ...rows(4)].join("\n"), "4 hours; expected 12"],
    [[HEAD, ...rows(30).filter((_, i) => i < 5 || i > 15)].join("\n"), "11 hours are missing"],
    [[HEAD, ...rows(20), row(3)].join("\n"), "not later than the one before"],
    [
      [HEAD.replace("temperature", "heat"), ...rows(20)].join("\n"),
      'a column "temperature (degC)"',
    ],
    [[HEAD.replace("sun (W/m2)", "x"), ...rows(20)].join("\n"), 'a column "sun (W/m2)"'],
    [[HEAD, ...rows(20), `${stamp(20)},warm,80,0,3`].join("\n"), 'found "warm"'],
    [
      [
        "time,temperature (degC),humidity (%),cloud (%)",
        ...Array.from({ length: 20 }, (_, hour) => `${stamp(hour)},1,50,${hour < 19 ? 50 : 140}`),
      ].join("\n"),
      "0 to 100 %",
    ],
  ];
  for (const [text, words] of faults) {
    assertThrows(() => readForecast(text, OPTIONS), Error, words);
  }
});

Deno.test("readForecast(): no text crashes it", () => {
  // Property: a forecast or an error for the user
  const cell = fc.oneof(
    fc.string(),
    fc.constantFrom("2027-01-14 00:00", "-5", "80", "", "NaN", "1e9"),
  );
  const line = fc.array(cell, { maxLength: 6 }).map((cells) => cells.join(","));
  fc.assert(fc.property(fc.array(line, { maxLength: 20 }), fc.boolean(), (lines, headed) => {
    try {
      readForecast([...headed ? [HEAD] : [], ...lines].join("\n"), OPTIONS);
    } catch (error) {
      assert(error instanceof Error && /Input/.test(error.constructor.name), `${error}`);
    }
  }));
});

Deno.test("yearWith(): the span stands in the year, also over its end, and closes with the sun", async () => {
  // Property: global = diffuse + direct · cos z in the hours put in; all others as they were
  const { climate } = await openSmallStudy();
  const count = 48;
  const make = (value: number) => new Float64Array(count).fill(value);
  const span = {
    start: 8760 - 24,
    dryBulb: make(-17),
    relativeHumidity: make(0.5),
    globalHorizontal: make(200),
    windSpeed: make(7),
  };
  const year = yearWith(climate, [span]);
  assertEquals([year.dryBulb[8759], year.dryBulb[0], year.windSpeed[23]], [-17, -17, 7]);
  assertEquals([year.dryBulb[24], year.dryBulb[8735]], [
    climate.dryBulb[24],
    climate.dryBulb[8735],
  ]);
  const sun = hourlySun(climate.place);
  assertEquals(year.globalHorizontal[0], 0);
  assertEquals(year.globalHorizontal[12], 200);
  assertAlmostEquals(
    year.diffuseHorizontal[12]! + year.directNormal[12]! * sun.cosZenith[12]!,
    200,
    1e-6,
  );
});

Deno.test("readForecast() faults are InputErrors", () => {
  // Property: so that the command shows them without a stack
  assertThrows(() => readForecast("", OPTIONS), InputError);
});
