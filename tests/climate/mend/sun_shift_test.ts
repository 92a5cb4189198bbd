import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { monthOfHour } from "winterground/basics/mod.ts";
import {
  climateQuality,
  type ClimateYear,
  fitToSun,
  parseColumns,
  readClimate,
  yearFromNormals,
} from "winterground/climate/mod.ts";
import { hourlySun } from "winterground/sun/mod.ts";
import { ALDERSETT, NORMALS, sampleYear } from "../sample.ts";

const HOURS = 8760;
const YEAR = sampleYear();
const COLUMNS = parseColumns(
  `header: no
columns:
  dryBulb: {column: 1, unit: degC}
  relativeHumidity: {column: 2, unit: "%"}
  globalHorizontal: {column: 3, unit: W/m2}
  directNormal: {column: 4, unit: W/m2}
  diffuseHorizontal: {column: 5, unit: W/m2}
`,
  "c.yaml",
);
const GLOBAL_ONLY = { ...COLUMNS, columns: { ...COLUMNS.columns } };
delete GLOBAL_ONLY.columns.directNormal;
delete GLOBAL_ONLY.columns.diffuseHorizontal;

const RADIATION = ["globalHorizontal", "directNormal", "diffuseHorizontal"] as const;

/** A table of a year in whole W/m², its radiation late by some hours in some months (1 to 12). */
function tableOf(year: ClimateYear, late: number, months = everyMonth()): string {
  const part = (name: (typeof RADIATION)[number], hour: number) => {
    const by = months.includes(monthOfHour(hour) + 1) ? late : 0;
    const whole = Math.floor(by);
    const at = (step: number) => year[name][(hour - whole - step + HOURS) % HOURS]!;
    return ((1 - by + whole) * at(0) + (by - whole) * at(1)).toFixed(0);
  };
  return Array.from({ length: HOURS }, (_, hour) =>
    [
      year.dryBulb[hour]!.toFixed(1),
      (100 * year.relativeHumidity[hour]!).toFixed(0),
      ...RADIATION.map((name) => part(name, hour)),
    ].join(",")).join("\n");
}

function everyMonth(): number[] {
  return Array.from({ length: 12 }, (_, month) => month + 1);
}

function read(
  text: string,
  options: { globalOnly?: boolean; mendShift?: boolean; latitude?: number } = {},
) {
  return readClimate(text, {
    file: "y.csv",
    columns: options.globalOnly ? GLOBAL_ONLY : COLUMNS,
    place: { ...YEAR.place, latitude: options.latitude ?? YEAR.place.latitude },
    mendShift: options.mendShift ?? false,
  });
}

function words(year: ClimateYear): string {
  return [...year.notices, ...climateQuality(year).notices].map(({ text }) => text).join("\n");
}

Deno.test("global radiation alone that lags or leads by hours is named month by month", () => {
  // Property: direct and diffuse worked out from the global prove nothing; lag and lead of every size are told
  for (
    const [late, said] of [
      [1, "an hour too late"],
      [2, "2 hours too late"],
      [-1, "an hour too early"],
      [-2, "2 hours too early"],
      [6, "6 hours too late"],
      [0.5, "half an hour too late"],
    ] as const
  ) {
    const text = words(read(tableOf(YEAR, late), { globalOnly: true }));
    assert(text.includes(`${said} relative to the sun in every month`), `${late}: ${text}`);
  }
  const part = words(read(tableOf(YEAR, 2, [3, 4, 11]), { globalOnly: true }));
  assert(part.includes("2 hours too late relative to the sun in March, April, November"), part);
  assertEquals(
    words(read(tableOf(YEAR, 0), { globalOnly: true })).includes("relative to the sun"),
    false,
  );
});

Deno.test("global radiation with one of its parts is judged as global radiation alone", () => {
  // Property: the part that is missing follows from the others, so that the three close by themselves
  for (const part of ["directNormal", "diffuseHorizontal"] as const) {
    const columns = { ...COLUMNS, columns: { ...COLUMNS.columns } };
    delete columns.columns[part];
    const year = readClimate(tableOf(YEAR, 1), { file: "y.csv", columns, place: YEAR.place });
    assert(words(year).includes("an hour too late relative to the sun in every month"), part);
  }
});

/** A year with three tenths of the light outside the atmosphere, in whole W/m²: a dark northern winter. */
function darkYear(latitude: number): ClimateYear {
  const globalRadiation = meansAt(latitude, 0.3);
  return yearFromNormals({ ...NORMALS, globalRadiation }, { ...ALDERSETT, latitude }, 1);
}

Deno.test("an hour's shift in winter months with little sun is named", () => {
  // Property: the limit follows the size of the radiation, so that 6 W/m² of misfit in December count
  for (const latitude of [60, 63]) {
    const dark = darkYear(latitude);
    for (const late of [-1, 1]) {
      const text = words(read(tableOf(dark, late, [1, 11, 12]), { latitude }));
      const said = `an hour too ${late === 1 ? "late" : "early"} relative to the sun in ` +
        "January, November, December";
      assert(text.includes(said), `${latitude} ${late}: ${text}`);
    }
    const sound = words(read(tableOf(dark, 0), { latitude }));
    assert(!sound.includes("relative to the sun"), sound);
  }
});

Deno.test("no sound year is called shifted, whatever the latitude and the seed", () => {
  // Property: no false alarm, with the three series and with the global alone
  for (const latitude of [35, 49.6, 60, 66, 72]) {
    for (let seed = 1; seed <= 3; seed++) {
      const year = yearFromNormals(
        latitude > 55 ? { ...NORMALS, globalRadiation: meansAt(latitude, 0.4) } : NORMALS,
        { ...ALDERSETT, latitude },
        seed,
      );
      for (const globalOnly of [false, true]) {
        const text = words(read(tableOf(year, 0), { globalOnly, latitude }));
        assert(!text.includes("relative to the sun"), `${latitude} seed ${seed}: ${text}`);
      }
    }
  }
});

/** kWh/m² a day at a share of the light outside the atmosphere. */
function meansAt(latitude: number, share: number): number[] {
  const sun = hourlySun({ ...ALDERSETT, latitude });
  const sums = new Float64Array(12);
  const days = new Float64Array(12);
  sun.cosZenith.forEach((cosine, hour) => {
    sums[monthOfHour(hour)]! += share * cosine * sun.extraterrestrialNormal[hour]! / 1000;
    days[monthOfHour(hour)]! += 1 / 24;
  });
  return [...sums.map((sum, month) => sum / days[month]!)];
}

Deno.test("the mended year is the sound one, and the notice says by how much", () => {
  // Property: moving back undoes the shift; hours and kWh/m² moved are said
  for (const globalOnly of [false, true]) {
    const sound = read(tableOf(YEAR, 0), { globalOnly });
    const shifted = tableOf(YEAR, 2);
    const offer = words(read(shifted, { globalOnly }));
    assert(offer.includes("climate.mendShift: yes"), offer);
    const mended = read(shifted, { globalOnly, mendShift: true });
    for (const name of RADIATION) {
      mended[name].forEach((value, hour) => assertAlmostEquals(value, sound[name][hour]!, 1e-9));
    }
    const told = words(mended);
    assert(!told.includes("too late"), told);
    const match = /moved 2 hours earlier in every month .*?: ([\d.]+)\u00a0kWh\/m²/.exec(told);
    assert(match !== null, told);
    const moved = tableMoved(sound.globalHorizontal, 2);
    assertAlmostEquals(Number(match[1]), moved, 0.1);
  }
});

/** kWh/m² that stand in another hour after a move, half the sum of the differences. */
function tableMoved(global: Float64Array, hours: number): number {
  return global.reduce(
    (sum, value, hour) => sum + Math.abs(value - global[(hour - hours + HOURS) % HOURS]!) / 2000,
    0,
  );
}

Deno.test("only the months that are shifted are mended, and a sound year is left alone", () => {
  // Property: mending a sound year changes nothing and says so
  const sound = read(tableOf(YEAR, 0));
  const same = read(tableOf(YEAR, 0), { mendShift: true });
  for (const name of RADIATION) assertEquals(same[name], sound[name]);
  assert(words(same).includes("nothing was moved"), words(same));
  const mended = read(tableOf(YEAR, -1, [5, 6, 7]), { mendShift: true });
  sound.globalHorizontal.forEach((value, hour) =>
    assertAlmostEquals(mended.globalHorizontal[hour]!, value, 1e-9)
  );
  assert(words(mended).includes("moved an hour later in May, June, July"), words(mended));
});

Deno.test("one month alone is not certain where only global radiation was measured", () => {
  // Property: clouds of one month are no proof of a clock: named, not mended
  const year = read(tableOf(YEAR, 1, [4]), { globalOnly: true, mendShift: true });
  const text = words(year);
  assert(text.includes("an hour too late relative to the sun in April"), text);
  assert(!text.includes("moved an hour"), text);
});

Deno.test("months late through the summer only are called summer time", () => {
  // Property: the advice names the key that mends it
  const text = words(read(tableOf(YEAR, 1, [4, 5, 6, 7, 8, 9, 10])));
  assert(text.includes("daylightSaving: yes"), text);
  assert(!words(read(tableOf(YEAR, 1))).includes("daylightSaving: yes"));
});

Deno.test("fitToSun() finds shifts of half an hour in most months", () => {
  // Property: means over the hour that starts half an hour early lie between two hours
  const year = read(tableOf(YEAR, 0.5), { globalOnly: true });
  const fits = fitToSun(year, hourlySun(YEAR.place));
  assert(fits.filter(({ late }) => late === 0.5).length >= 10, JSON.stringify(fits));
});
