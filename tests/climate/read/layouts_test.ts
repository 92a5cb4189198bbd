import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { parseColumns, readClimate } from "winterground/climate/mod.ts";
import { dewPoint, saturationPressureOverWater } from "winterground/air/mod.ts";
import { hourlySun, sunPosition } from "winterground/sun/mod.ts";
import { moment, tmy3Text, two } from "./layout_texts.ts";
import { ALDERSETT, sampleYear } from "../sample.ts";

const YEAR = sampleYear(3);
Deno.test("the TMY3 layout is recognised: hours end at their stamp, every month of another year", () => {
  // Property: what was laid out is read back to its rounding
  const year = readClimate(tmy3Text(YEAR), { file: "t.csv" });
  assertEquals(year.layout, "TMY3");
  assertEquals(year.place, { ...ALDERSETT, name: "ALDERSETT, OLD FIELD, NM" });
  for (let hour = 0; hour < 8760; hour++) {
    assertAlmostEquals(year.dryBulb[hour]!, YEAR.dryBulb[hour]!, 0.0501);
    assertAlmostEquals(year.globalHorizontal[hour]!, YEAR.globalHorizontal[hour]!, 0.501);
  }
  assert(year.notices.some(({ text }) => text.startsWith("Albedo is 0")));
});

Deno.test("missing marks of TMY3 are filled where short and refused where long", () => {
  // Property: -9900 is no temperature
  const lines = tmy3Text(YEAR).split("\r\n");
  const mark = (from: number, length: number) =>
    lines.map((line, index) => {
      if (index < from || index >= from + length) return line;
      const cells = line.split(",");
      cells[5] = "-9900";
      return cells.join(",");
    }).join("\r\n");
  const year = readClimate(mark(500, 4), { file: "t.csv" });
  assert(Math.min(...year.dryBulb) > -60);
  const { message } = assertThrows(() => readClimate(mark(500, 9), { file: "t.csv" }), InputError);
  assert(message.startsWith('t.csv:501 (column "Dry-bulb (C)"): Cannot fill the gap'), message);
});

function nsrdb(leap: boolean): string {
  const lines = [
    "Source,Location ID,City,State,Country,Latitude,Longitude,Time Zone,Elevation,Local Time Zone",
    "NSRDB,1,-,-,-,49.6,-101.3,-6,560,-6",
    "Year,Month,Day,Hour,Minute,Dew Point,DHI,DNI,GHI,Pressure,Temperature,Wind Speed,,",
  ];
  for (let row = 0; row < (leap ? 8784 : 8760); row++) {
    const date = new Date(Date.UTC(leap ? 2004 : 2001, 0, 1, row));
    const hour = leap && row >= 1440 ? row - 24 : Math.min(row, 8759);
    const vapour = YEAR.relativeHumidity[hour]! * saturationPressureOverWater(YEAR.dryBulb[hour]!);
    lines.push([
      date.getUTCFullYear(),
      date.getUTCMonth() + 1,
      date.getUTCDate(),
      date.getUTCHours(),
      30,
      Math.min(YEAR.dryBulb[hour]!, dewPoint(vapour)).toFixed(2),
      YEAR.diffuseHorizontal[hour]!.toFixed(1),
      YEAR.directNormal[hour]!.toFixed(1),
      YEAR.globalHorizontal[hour]!.toFixed(1),
      947,
      YEAR.dryBulb[hour]!.toFixed(2),
      YEAR.windSpeed[hour]!.toFixed(1),
      "",
      "",
    ].join(","));
  }
  return lines.join("\n") + "\n";
}

Deno.test("the NSRDB layout is recognised: the middle of the hour, humidity from the dew point", () => {
  // Property: what was laid out is read back to its rounding
  const year = readClimate(nsrdb(false), { file: "n.csv" });
  assertEquals(year.layout, "NSRDB");
  for (let hour = 0; hour < 8760; hour++) {
    assertAlmostEquals(year.dryBulb[hour]!, YEAR.dryBulb[hour]!, 0.00501);
    assertAlmostEquals(year.directNormal[hour]!, YEAR.directNormal[hour]!, 0.0501);
  }
  const summer = 4700;
  assertAlmostEquals(year.relativeHumidity[summer]!, YEAR.relativeHumidity[summer]!, 0.01);
});

Deno.test("8784 rows are refused with the lines of 29 February, or left out on demand", () => {
  // Property: the year after 29 February is not a day late
  const text = nsrdb(true);
  const { message } = assertThrows(() => readClimate(text, { file: "n.csv" }), InputError);
  assert(message.startsWith("n.csv:1420: Cannot use 29 February"), message);
  assert(message.includes("up to line 1443"), message);
  const columns = parseColumns("leapDay: leave out\n", "c.yaml");
  const year = readClimate(text, { file: "n.csv", columns });
  assertAlmostEquals(year.dryBulb[1416]!, YEAR.dryBulb[1416]!, 0.00501);
  assertAlmostEquals(year.dryBulb[8759]!, YEAR.dryBulb[8759]!, 0.00501);
});

/** A clear year as PVGIS lays it out: direct 600 W/m², diffuse 130 cos z, read some time after the hour. */
function pvgis(offset: number): string {
  const lines = [
    "Latitude (decimal degrees): 45.000",
    "Longitude (decimal degrees): 8.000",
    "Elevation (m): 250.0",
    `Irradiance Time Offset (h): ${offset}`,
    "month,year",
    "1,2010",
    "time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP",
  ];
  for (let hour = 0; hour < 8760; hour++) {
    const [month, day, start] = moment(hour);
    const time = new Date(Date.UTC(2010, 0, 1) + (hour + offset) * 3.6e6);
    const { zenith } = sunPosition({ time, latitude: 45, longitude: 8 });
    const cosine = Math.max(0, Math.cos(zenith * Math.PI / 180));
    const direct = cosine > 0 ? 600 : 0;
    const diffuse = 130 * cosine;
    const global = diffuse + direct * cosine;
    const radiation = [global, direct, diffuse].map((value) => value.toFixed(2));
    lines.push(
      `2010${two(month)}${two(day)}:${two(start)}00,${start},${80 - start},${
        radiation.join(",")
      },300,${1 + start / 10},0,98000`,
    );
  }
  return lines.join("\n") + "\n\nT2m: 2-m air temperature (degree Celsius)\n";
}

Deno.test("the PVGIS layout is turned to local hours and to means of the hour", () => {
  // Property: a clear year comes out as its exact hourly means, whatever the moment of the radiation;
  // 5 W/m² in full hours is what straight lines between hours miss
  for (const offset of [0.1761, 0.8]) {
    const year = readClimate(pvgis(offset), { file: "p.csv" });
    assertEquals([year.layout, year.place.timeZone], ["PVGIS", 1]);
    const [near, far] = [{ ...ALDERSETT, longitude: 7.6, timeZone: 2 }, ALDERSETT].map((place) =>
      readClimate(pvgis(offset), { file: "p.csv", place }).place.timeZone
    );
    assertEquals([near, far], [2, 1]);
    assertEquals(year.dryBulb[10], 9); // 09:00 UTC stands at 10:00 local
    const sun = hourlySun(year.place);
    let squares = 0;
    for (let hour = 24; hour < 8736; hour++) {
      const exact = 730 * sun.cosZenith[hour]!;
      squares += (year.globalHorizontal[hour]! - exact) ** 2 / 8712;
    }
    assert(Math.sqrt(squares) < 5, `offset ${offset}: ${Math.sqrt(squares)}`);
  }
});

Deno.test("a layout nobody knows is refused with a way out", () => {
  // Property: nothing is guessed
  const { message } = assertThrows(
    () => readClimate("a,b,c\n1,2,3\n", { file: "x.csv" }),
    InputError,
  );
  assert(message.includes("columns file") && message.startsWith("x.csv:1"), message);
});

Deno.test("damaged heads of the public layouts are refused with their line", () => {
  // Property: a place is never guessed
  const cases: [text: string, words: string][] = [
    [tmy3Text(YEAR).replace("49.600", "north"), "t.csv:1: Cannot read the station"],
    [nsrdb(false).replace(",49.6,", ",,"), 't.csv:2 (column "Latitude"): Cannot read the site'],
    [pvgis(0.2).replace("8.000", "east"), "t.csv:2: Cannot read the site"],
    [tmy3Text(YEAR).replace(",560", ",56000"), "expected elevation of -450 to 6000 m, found 56000"],
    [
      tmy3Text(YEAR).replace(",-101.3", ",101.3"),
      "longitude 101.3 deg and time zone UTC-6 do not fit",
    ],
    [
      tmy3Text(YEAR).replace("Dry-bulb (C)", "Dry bulb"),
      "expected a column of dry-bulb temperature",
    ],
  ];
  for (const [text, words] of cases) {
    const { message } = assertThrows(() => readClimate(text, { file: "t.csv" }), InputError);
    assert(message.includes(words), message);
  }
});

Deno.test("a columns file takes time zones by their name, and refuses one that means two things", () => {
  // Property: MST is seven hours behind UTC; IST is told with its line
  const columns = parseColumns(
    "place: {latitude: 47, longitude: -105, elevation: 900 m, timeZone: MST}\ntime: {timeZone: utc}\n",
    "c.yaml",
  );
  assertEquals(columns.place?.timeZone, -7);
  assertEquals(columns.stampZone, 0);
  assertThrows(
    () => parseColumns("skipLines: 0\ntime:\n  timeZone: IST\n", "c.yaml"),
    Error,
    "c.yaml:3: Cannot use time.timeZone: expected a time zone",
  );
  assertThrows(() => parseColumns("time: {timeZone: 15}\n", "c.yaml"), Error, "UTC+14");
});
