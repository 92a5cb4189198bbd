import { MONTH_FIRST_HOURS, monthOfHour } from "../../../lib/basics/mod.ts";
import { assert, assertEquals } from "@std/assert";
import { climateQuality, type ClimateYear, fitToSun } from "winterground/climate/mod.ts";
import { diffuseShare, hourlySun } from "winterground/sun/mod.ts";
import { sampleYear, withSeries } from "../sample.ts";

const RADIATION = ["globalHorizontal", "directNormal", "diffuseHorizontal"] as const;
const YEAR = sampleYear();

function texts(year: ClimateYear): string {
  return climateQuality(year).notices.map(({ text }) => text).join("\n");
}

/** Radiation moved later by some hours in some months (1 to 12). */
function moved(year: ClimateYear, hours: number, months: readonly number[]): ClimateYear {
  return withSeries(
    year,
    RADIATION,
    (value, hour, series) =>
      months.includes(monthOfHour(hour) + 1) ? series[(hour - hours + 8760) % 8760]! : value,
  );
}

Deno.test("a sound invented year gives no notice, whatever the seed", () => {
  // Property: no false alarm
  for (let seed = 1; seed <= 4; seed++) assertEquals(texts(sampleYear(seed)), "");
});

Deno.test("radiation an hour late or early is told with the months named", () => {
  // Property: exactly the months moved are named
  const late = texts(moved(YEAR, 1, [3, 7]));
  assert(late.includes("an hour too late relative to the sun in March, July:"), late);
  const early = texts(moved(YEAR, -1, [12]));
  assert(early.includes("an hour too early relative to the sun in December:"), early);
  const all = texts(moved(YEAR, 1, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]));
  assert(all.includes("too late relative to the sun in every month"), all);
});

Deno.test("a shift is found in most months where only global radiation was measured", () => {
  // Property: the fit to the sun's height takes over where direct and diffuse close by themselves
  const shifted = moved(YEAR, 1, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
  const sun = hourlySun(YEAR.place);
  const split = { ...shifted };
  const diffuse = new Float64Array(8760);
  const direct = new Float64Array(8760);
  for (let hour = 0; hour < 8760; hour++) {
    const global = shifted.globalHorizontal[hour]!;
    const share = sun.upShare[hour]!;
    const cosine = share > 0 ? sun.cosZenith[hour]! / share : 0;
    const outside = sun.cosZenith[hour]! * sun.extraterrestrialNormal[hour]!;
    const part = outside > 0 ? diffuseShare(global / outside) : 1;
    direct[hour] = cosine > 0.05 ? global * (1 - part) / cosine : 0;
    diffuse[hour] = global - direct[hour]! * cosine;
  }
  const fits = fitToSun({ ...split, directNormal: direct, diffuseHorizontal: diffuse }, sun);
  assert(fits.filter((fit) => fit.late === 1).length >= 10, JSON.stringify(fits));
  assert(fits.every((fit) => fit.late !== -1));
});

Deno.test("stuck, jumping and impossible readings are told", () => {
  // Property: each kind of fault has its notice
  const start = MONTH_FIRST_HOURS[4]!;
  const cases: [year: ClimateYear, words: string][] = [
    [
      withSeries(YEAR, ["dryBulb"], (v, h, s) => h > start && h < start + 60 ? s[start]! : v),
      "does not change",
    ],
    [
      withSeries(YEAR, ["dryBulb"], (v, h) => h === start ? v + 14 : v),
      "Dry-bulb temperature has spikes",
    ],
    [withSeries(YEAR, ["globalHorizontal"], (v, h) => h === start + 1 ? 300 : v), "at night"],
    [
      withSeries(YEAR, ["globalHorizontal"], (v, h) => h === start + 7 ? 1550 : v),
      "above the physical limit",
    ],
    [withSeries(YEAR, ["globalHorizontal"], (v) => v * 0.5), "does not equal diffuse plus direct"],
    [withSeries(YEAR, RADIATION, (v) => v * 0.3), "check its unit"],
    [withSeries(YEAR, ["pressure"], () => 101500), "reduced to sea level"],
    [withSeries(YEAR, ["relativeHumidity"], (v) => v / 100), "may be given as a fraction"],
    [withSeries(YEAR, ["windSpeed"], (v) => v * 3.6), "km/h or mph"],
  ];
  for (const [year, words] of cases) {
    assert(texts(year).includes(words), `${words}: ${texts(year)}`);
  }
});

Deno.test("weeks without sun and a climate too warm for stored heat are told", () => {
  // Property: such a year runs, with a notice
  const dark = withSeries(YEAR, RADIATION, (value, hour) => hour < 21 * 24 ? 0 : value);
  assert(texts(dark).includes("21 days in a row almost without sun, from day 1 of"), texts(dark));
  const turn = withSeries(
    YEAR,
    RADIATION,
    (value, hour) => hour < 10 * 24 || hour >= 350 * 24 ? 0 : value,
  );
  assert(texts(turn).includes("25 days in a row almost without sun, from day 351"), texts(turn));
  assert(
    texts(withSeries(YEAR, RADIATION, () => 0)).includes("365 days in a row"),
    "no sun at all",
  );
  const warm = withSeries(YEAR, ["dryBulb"], (value) => value + 35);
  assert(texts(warm).includes("little use for stored heat"), texts(warm));
});
