import { assert, assertAlmostEquals, assertEquals, assertRejects } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { climateQuality, parseColumns, readClimate } from "winterground/climate/mod.ts";
import { openStudy } from "winterground/study/mod.ts";
import { PLAIN_COLUMNS, plainYear } from "../harness/climate_files.ts";

const ROWS = plainYear();

function read(rows: readonly string[], columns: string = PLAIN_COLUMNS) {
  return readClimate(rows.join("\n"), { file: "y.csv", columns: parseColumns(columns, "c.yaml") });
}

function words(rows: readonly string[], columns?: string): string {
  const year = read(rows, columns);
  return [...year.notices, ...climateQuality(year).notices].map(({ text }) => text).join("\n");
}

/** Date and time `hours` after 1 January 2001 00:00. */
function clock(hours: number): string {
  const moment = new Date(Date.UTC(2001, 0, 1) + hours * 3.6e6).toISOString();
  return `${moment.slice(0, 10)},${moment.slice(11, 16)}`;
}

/** Rows of hours with their stamps moved. */
function moved(by: number): string[] {
  return [ROWS[0]!, ...ROWS.slice(1).map((row, hour) => `${clock(hour + by)},${row.slice(17)}`)];
}

const BASE = read(ROWS);

Deno.test("three days of zeros in June are told", () => {
  // Property: under the heaviest cloud some light comes by day, so that 0 W/m² is a fault of the sensor
  const rows = ROWS.map((row) => /^2001-06-1[012],/.test(row) ? row.replace(/,[^,]*$/, ",0") : row);
  const text = words(rows);
  assert(/Global radiation is 0 by day in \d+ hours \(first 10 June 0[5-7]:00\)/.test(text), text);
  assert(!words(ROWS).includes("0 by day"), words(ROWS));
});

Deno.test("summer time that is asked for and not in the stamps is told", () => {
  // Property: stamps without a jump are taken as standard time, and that is said
  const columns = PLAIN_COLUMNS.replace("stamp: start", "stamp: start\n  daylightSaving: yes");
  const text = words(ROWS, columns);
  assert(/daylightSaving: yes, but no hour is skipped/.test(text), text);
  assertEquals(read(ROWS, columns).dryBulb, BASE.dryBulb);
  const jumpOnly = [
    ROWS[0]!,
    ...ROWS.slice(1).map((row, hour) =>
      `${clock(hour >= 2162 && hour < 7201 ? hour + 1 : hour)},${row.slice(17)}`
    ).filter((_, hour) => hour !== 7200),
  ];
  const half = words(jumpOnly, columns);
  assert(half.includes("no hour is doubled"), half);
});

Deno.test("rows that do not fill clock hours are told with the offset that puts them right", () => {
  // Property: stamps on the half hour fit the middle only, stamps on the hour start and end only
  const at = (stamp: string) => PLAIN_COLUMNS.replace("stamp: start", `stamp: ${stamp}`);
  for (
    const [by, stamp, said] of [
      [0.5, "start", "from half past"],
      [0.5, "end", "from half past"],
      [1, "middle", "from half past"],
    ] as const
  ) {
    const text = words(moved(by), at(stamp));
    assert(text.includes(said) && text.includes("30 min"), `${stamp} ${by}: ${text}`);
  }
  for (const [by, stamp] of [[0, "start"], [1, "end"], [0.5, "middle"]] as const) {
    assert(!words(moved(by), at(stamp)).includes("half past"), `${stamp} ${by}`);
  }
});

/** The plain year in half hours, its radiation as sums or means. */
function halfHours(sums: boolean): string[] {
  return [
    ROWS[0]!,
    ...ROWS.slice(1).flatMap((row, hour) => {
      const cells = row.slice(17).split(",");
      if (sums) cells[2] = String(Number(cells[2]) / 2);
      return [0, 0.5].map((half) => `${clock(hour + half)},${cells.join(",")}`);
    }),
  ];
}

Deno.test("energy sums of half an hour are sums of half an hour", () => {
  // Property: 100 Wh/m² in half an hour are 200 W/m²; the reader is told
  const columns = PLAIN_COLUMNS.replace("unit: W/m2", "unit: Wh/m2");
  const year = read(halfHours(true), columns);
  year.globalHorizontal.forEach((value, hour) =>
    assertAlmostEquals(value, BASE.globalHorizontal[hour]!, 1e-9)
  );
  const text = year.notices.map((one) => one.text).join("\n");
  assert(text.includes("sums over 30 min"), text);
  assert(!words(halfHours(false)).includes("sums over"), "means need no word");
});

/** A study of the plain year; its text changed. */
async function openedWith(change: (text: string) => string) {
  const folder = await Deno.makeTempDir();
  try {
    await Deno.writeTextFile(`${folder}/year.csv`, ROWS.join("\n"));
    await Deno.writeTextFile(`${folder}/year.yaml`, PLAIN_COLUMNS);
    const text = `place:
  name: Somewhere
  latitude: 47 deg
  longitude: -97 deg
  elevation: 270 m
  timeZone: CST
climate: {file: year.csv, columns: year.yaml}
house: {length: 20 m, width: 8 m}
`;
    await Deno.writeTextFile(`${folder}/s.yaml`, change(text));
    return await openStudy(`${folder}/s.yaml`);
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

Deno.test("a longitude with the wrong sign is refused before anything is computed", async () => {
  // Property: place and clock, and place and weather file, contradict each other; the sign to write is said
  const refused = async (from: string, to: string) =>
    (await assertRejects(() => openedWith((text) => text.replace(from, to)), InputError)).message;
  const sign = await refused("longitude: -97", "longitude: 97");
  assert(/s\.yaml:4:\d+: .*longitude 97 deg and time zone UTC-6 do not fit/.test(sign), sign);
  assert(sign.includes("write -97 deg"), sign);
  const both = await refused(
    "longitude: -97 deg\n  elevation: 270 m\n  timeZone: CST",
    "longitude: 97 deg\n  elevation: 270 m\n  timeZone: UTC+6",
  );
  assert(/s\.yaml:4:\d+: .*that of the weather file -97 deg/.test(both), both);
  const study = await openedWith((text) => text);
  assertEquals(study.place.longitude, -97);
});

Deno.test("climate.mendShift moves radiation back for a study, and is a default only of hourly files", async () => {
  // Property: the key reaches the reader; the notice stands in the study's weather
  const study = await openedWith((text) =>
    text.replace("year.yaml}", "year.yaml, mendShift: yes}")
  );
  assert(study.climate.notices.some(({ text }) => text.includes("climate.mendShift")));
  const plain = await openedWith((text) => text);
  assert(plain.defaults.some(({ key }) => key === "climate.mendShift"));
  assert(!plain.climate.notices.some(({ text }) => text.includes("climate.mendShift")));
});
