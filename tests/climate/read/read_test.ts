import { assert, assertAlmostEquals, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { parseColumns, readClimate } from "winterground/climate/mod.ts";
import { PLAIN_COLUMNS, plainYear } from "../../harness/climate_files.ts";

const ROWS = plainYear();
const PLACE = { name: "Testfield", latitude: 47, longitude: -97, elevation: 270, timeZone: -6 };

function read(rows: readonly string[], columns: string = PLAIN_COLUMNS) {
  return readClimate(rows.join("\n"), { file: "y.csv", columns: parseColumns(columns, "c.yaml") });
}

function refuse(rows: readonly string[], columns?: string): string {
  return assertThrows(() => read(rows, columns), InputError).message;
}

/** Rows with another date and time in front, from the hour's number. */
function restamp(stamp: (hour: number, row: string) => string | null): string[] {
  const rows = ROWS.slice(1).map((row, hour) => {
    const front = stamp(hour, row);
    return front === null ? null : `${front},${row.slice(17)}`;
  });
  return [ROWS[0]!, ...rows.filter((row) => row !== null)];
}

/** Date and time `hours` after 1 January 2001 00:00. */
function clock(hours: number): string {
  const moment = new Date(Date.UTC(2001, 0, 1) + hours * 3.6e6).toISOString();
  return `${moment.slice(0, 10)},${moment.slice(11, 16)}`;
}

const BASE = read(ROWS);

Deno.test("stamps at the start, the middle and the end of the hour give the same year", () => {
  // Property: what the columns file says of the stamp decides the hour
  const end = read(
    restamp((hour) => clock(hour + 1)),
    PLAIN_COLUMNS.replace("stamp: start", "stamp: end"),
  );
  assertEquals(end.dryBulb, BASE.dryBulb);
  const middle = read(
    restamp((hour) => clock(hour + 0.5)),
    PLAIN_COLUMNS.replace("start", "middle"),
  );
  assertEquals(middle.globalHorizontal, BASE.globalHorizontal);
  const late = PLAIN_COLUMNS.replace("stamp: start", "stamp: start\n  offset: -15 min");
  assertEquals(read(restamp((hour) => clock(hour + 0.25)), late).dryBulb, BASE.dryBulb);
});

Deno.test("stamps in universal time are turned to local standard time", () => {
  // Property: an hour's values come to stand six hours earlier at UTC-6
  const columns = PLAIN_COLUMNS.replace("stamp: start", "stamp: start\n  timeZone: 0");
  const year = read(restamp((hour) => clock(hour + 6)), columns);
  assertEquals(year.dryBulb, BASE.dryBulb);
});

/** Local clock time with summer time from 1 April 02:00 to 28 October 02:00, both standard. */
function summerClock(hour: number): string {
  const [start, end] = [90 * 24 + 2, 300 * 24 + 1];
  return clock(hour >= start && hour < end ? hour + 1 : hour);
}

Deno.test("summer time is refused with its reason, and followed where the columns file says so", () => {
  // Property: one hour missing in spring and one doubled in autumn is a clock change
  const rows = restamp(summerClock);
  const message = refuse(rows);
  assert(message.includes("clocks change for daylight saving"), message);
  assert(message.includes("daylightSaving: yes"), message);
  const columns = PLAIN_COLUMNS.replace("stamp: start", "stamp: start\n  daylightSaving: yes");
  assertEquals(read(rows, columns).dryBulb, BASE.dryBulb);
});

Deno.test("a table finer than hours is averaged", () => {
  // Property: the mean of four quarters; a quarter missing does not matter, two do
  const rows = [ROWS[0]!];
  ROWS.slice(1).forEach((row, hour) => {
    const [, , temperature, humidity, global] = row.split(",");
    for (const quarter of [0, 1, 2, 3]) {
      const value = Number(temperature) + [-3, -1, 1, 3][quarter]! / 10;
      rows.push(`${clock(hour + quarter / 4)},${value.toFixed(1)},${humidity},${global}`);
    }
  });
  const year = read(rows);
  year.dryBulb.forEach((value, hour) => assertAlmostEquals(value, BASE.dryBulb[hour]!, 1e-9));
  rows.splice(1001, 1);
  const gap = read(rows);
  assertEquals(gap.notices.filter(({ text }) => text.includes("filled in")), []);
  rows.splice(1001, 1);
  const wider = read(rows);
  assert(wider.notices.some(({ text }) => text.includes("dry-bulb temperature: 1 missing hour")));
});

Deno.test("short gaps are filled and listed, long ones refused with line, column and what to do", () => {
  // Property: temperature straight between neighbours, radiation in proportion to the sun
  const blank = (from: number, length: number, column: number) =>
    ROWS.map((row, line) => {
      if (line < from + 1 || line > from + length) return row;
      const cells = row.split(",");
      cells[column] = "";
      return cells.join(",");
    });
  const year = read(blank(1000, 3, 2));
  const [before, after] = [BASE.dryBulb[999]!, BASE.dryBulb[1003]!];
  assertAlmostEquals(year.dryBulb[1001]!, (before + after) / 2, 1e-9);
  assert(
    year.notices.some(({ text }) =>
      text.includes("3 missing hours") && text.includes("11 February 16:00")
    ),
  );
  const noon = 4000 - 4000 % 24 + 11;
  const sunny = read(blank(noon, 2, 4));
  for (const hour of [noon, noon + 1]) {
    assertAlmostEquals(sunny.globalHorizontal[hour]! / BASE.globalHorizontal[hour]!, 1, 0.1);
  }
  const message = refuse(blank(1000, 7, 2));
  assert(
    /^y\.csv:1002 \(column "temperature"\): Cannot fill the gap.*7 hours from 11 February 16:00/
      .test(message),
    message,
  );
  const lost = refuse([...ROWS.slice(0, 2000), ...ROWS.slice(2010)]);
  assert(/^y\.csv:2000: .*10 hours are missing/.test(lost), lost);
});

Deno.test("rows in order need no stamps, heads or points", () => {
  // Property: numbers for columns, decimal comma, semicolon, a time written in many ways
  const rows = [
    "station 17",
    ...ROWS.slice(1).map((row) => row.slice(17).replaceAll(",", ";").replaceAll(".", ",")),
  ];
  const columns = `skipLines: 1
header: no
delimiter: semicolon
decimal: comma
columns:
  dryBulb: {column: 1, unit: degC}
  relativeHumidity: {column: 2, unit: "%"}
  globalHorizontal: {column: 3, unit: Wh/m2}
`;
  const year = readClimate(rows.join("\r\n"), {
    file: "y.csv",
    columns: parseColumns(columns, "c.yaml"),
    place: PLACE,
  });
  assertEquals(year.dryBulb, BASE.dryBulb);
  assertEquals(year.globalHorizontal, BASE.globalHorizontal);
  const short = refuse(
    rows.slice(0, 500),
    `${columns}place: {latitude: 47, longitude: -97, elevation: 270 m, timeZone: -6}\n`,
  );
  assert(short.includes("expected 8760 rows in order from 1 January, found 499"), short);
});

Deno.test("twelve months are taken out of a longer record, a winter in one piece too", () => {
  // Property: from picks the months; every hour stands where its month and day say
  const at = (hour: number) => clock(hour).slice(0, 10);
  const rows = [ROWS[0]!];
  for (let hour = -4000; hour < 13200; hour++) {
    const cells = ROWS[((hour % 8760) + 8760) % 8760 + 1]!.split(",");
    const noon = hour % 24 === 12 ? 0.5 : 0;
    const temperature = (hour < 4344 ? 1 : 2) + noon; // other values from 1 July 2001 on
    rows.push(`${clock(hour)},${temperature},${cells[3]},${cells[4]}`);
  }
  const message = refuse(rows);
  assert(
    /several years: expected twelve months, found rows of 2000 to 2002/.test(message),
    message,
  );
  assert(message.includes("from: 2000-01-01"), message);
  const from = (date: string) =>
    PLAIN_COLUMNS.replace("stamp: start", `stamp: start\n  from: ${date}`);
  const calendar = read(rows, from("2001-01-01"));
  assertEquals([calendar.dryBulb[0], calendar.dryBulb[4343], calendar.dryBulb[4344]], [1, 1, 2]);
  const winter = read(rows, from("2001-07-01"));
  assertEquals(at(4344), "2001-07-01");
  assertEquals(new Set(winter.dryBulb), new Set([2, 2.5]));
  assertEquals(winter.globalHorizontal, BASE.globalHorizontal);
  assert(refuse(rows, from("2010-01-01")).includes("the file has no rows in that period"));
  const torn = [...rows.slice(0, 6000), ...rows.slice(6001), rows[6000]!];
  assert(/^y\.csv:\d+: Cannot take twelve months/.test(refuse(torn, from("2001-01-01"))));
});

Deno.test("twelve-hour clocks and other formats are read", () => {
  // Property: the format decides, and a moment that does not exist is refused
  const half = (hour: number) =>
    `${hour % 12 === 0 ? 12 : hour % 12}:00 ${hour < 12 ? "AM" : "pm"}`;
  const rows = restamp((hour) => {
    const [date] = clock(hour).split(",");
    const [year, month, day] = date!.split("-");
    return `${day}.${month}.${year!.slice(2)},${half(hour % 24)}`;
  });
  const columns = PLAIN_COLUMNS.replace("YYYY-MM-DD", "DD.MM.YY").replace('"HH:mm"', '"HH:mm a"');
  assertEquals(read(rows, columns).dryBulb, BASE.dryBulb);
  const named = restamp((hour) => {
    const moment = new Date(Date.UTC(2001, 0, 1, hour)).toUTCString(); // Mon, 01 Jan 2001 00:00:00 GMT
    return `${moment.slice(5, 16).replaceAll(" ", "-")},${moment.slice(17, 22)}`;
  });
  assertEquals(
    read(named, PLAIN_COLUMNS.replace("YYYY-MM-DD", "DD-MMM-YYYY")).dryBulb,
    BASE.dryBulb,
  );
  rows[77] = rows[77]!.replace(/^\d+/, "32");
  assert(/^y\.csv:78: Cannot read the time: .*found "32\./.test(refuse(rows, columns)));
});

Deno.test("many faults are told in one pass, in order, twenty at most", () => {
  // Property: nobody has to run the reader once for each fault
  const rows = ROWS.map((row, line) =>
    line > 0 && line % 100 === 0 ? row.replace(/[^,]*$/, "n/a") : row
  );
  const lines = refuse(rows).split("\n");
  assertEquals(lines.length, 20);
  assert(
    lines[0]!.startsWith('y.csv:101 (column "global"): Cannot read global radiation'),
    lines[0],
  );
  const marked = read(rows, `missing: ["n/a"]\n${PLAIN_COLUMNS}`);
  assert(marked.notices.some(({ text }) => text.includes("global radiation")));
});

Deno.test("a stray reading out of range names line and column, a whole column of them its unit", () => {
  // Property: one hot cell is a fault, a hot summer is degF and told with file and line
  const one = ROWS.map((row, line) =>
    line === 300 ? row.replace(/,[^,]*(,[^,]*,[^,]*)$/, ",99.9$1") : row
  );
  const message = refuse(one);
  assert(
    /^y\.csv:301 \(column "temperature"\): Cannot use dry-bulb temperature: expected -90 to 60/
      .test(message),
    message,
  );
  const all = ROWS.map((row, line) => {
    const cells = row.split(",");
    if (line > 0) cells[2] = (Number(cells[2]) * 1.8 + 32).toFixed(2);
    return cells.join(",");
  });
  const { notices } = read(all);
  assert(
    notices.some(({ text }) => /^y\.csv:\d+ .*looks like degF/.test(text)),
    JSON.stringify(notices),
  );
  const right = read(all, PLAIN_COLUMNS.replace("unit: degC", "unit: degF"));
  right.dryBulb.forEach((value, hour) => assertAlmostEquals(value, BASE.dryBulb[hour]!, 0.01));
});

Deno.test("defaults taken for wind, pressure and the split are told", () => {
  // Property: nothing is invented in silence
  const words = BASE.notices.map(({ text }) => text).join("\n");
  assert(words.includes("No wind speed in the file: 3 m/s"), words);
  assert(words.includes("No air pressure in the file: 98123 Pa"), words);
  assert(words.includes("Erbs, Klein & Duffie 1982"), words);
});

Deno.test("an albedo of nothing but zeros is taken as missing, a dew point above the air is told", () => {
  // Property: columns that cannot be true are not used in silence
  const rows = ROWS.map((row, line) =>
    `${row},${line === 0 ? "albedo,dew" : line === 50 ? "0,30" : "0,-40"}`
  );
  const columns =
    `${PLAIN_COLUMNS}  albedo: {column: albedo}\n  dewPoint: {column: dew, unit: degC}\n`;
  const year = read(rows, columns);
  assertEquals(year.albedo, null);
  const words = year.notices.map(({ text }) => text).join("\n");
  assert(words.includes("Albedo is 0 in every hour"), words);
  assert(words.includes("Dew point above the dry bulb in 1 hour, first 3 January 01:00"), words);
});
