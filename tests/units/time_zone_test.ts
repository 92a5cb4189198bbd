import { assert, assertEquals, assertThrows } from "@std/assert";
import { QuantityError, readTimeZone } from "winterground/units/mod.ts";

/** Abbreviations of standard time, each with a zone of the IANA time zone database that uses it. */
const ZONES: readonly (readonly [abbreviation: string, zone: string])[] = [
  ["NST", "America/St_Johns"],
  ["AST", "America/Halifax"],
  ["EST", "America/New_York"],
  ["CST", "America/Winnipeg"],
  ["MST", "America/Denver"],
  ["PST", "America/Vancouver"],
  ["AKST", "America/Anchorage"],
  ["HST", "Pacific/Honolulu"],
  ["GMT", "Europe/London"],
  ["WET", "Europe/Lisbon"],
  ["CET", "Europe/Berlin"],
  ["MEZ", "Europe/Berlin"],
  ["EET", "Europe/Helsinki"],
  ["MSK", "Europe/Moscow"],
];

/** Hours east of UTC that a zone's clock shows on 1 January. */
function january(zone: string): number {
  const parts = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    timeZoneName: "longOffset",
  }).formatToParts(new Date(Date.UTC(2024, 0, 1, 12)));
  const text = parts.find(({ type }) => type === "timeZoneName")!.value;
  const [, sign, hours, minutes] = /^GMT(?:([+-])(\d\d):(\d\d))?$/.exec(text)!;
  const size = Number(hours ?? 0) + Number(minutes ?? 0) / 60;
  return sign === "-" ? -size : size;
}

Deno.test("readTimeZone() knows the standard times of North America and Europe", () => {
  // Source: IANA time zone database, as the runtime carries it (1 January 2024)
  for (const [abbreviation, zone] of ZONES) {
    assertEquals(readTimeZone(abbreviation), january(zone), abbreviation);
    assertEquals(readTimeZone(abbreviation.toLowerCase()), january(zone), abbreviation);
  }
});

Deno.test("readTimeZone() takes offsets as they are written", () => {
  // Property: sign, minutes and dash do not change the offset
  const cases: [string | number, number][] = [
    [-6, -6],
    ["-6", -6],
    ["+5.5", 5.5],
    ["UTC-6", -6],
    ["UTC\u22126", -6],
    ["utc - 6", -6],
    ["GMT-6", -6],
    ["UTC+05:30", 5.5],
    ["UTC+0530", 5.5],
    ["-03:30", -3.5],
    ["UTC", 0],
    ["Z", 0],
  ];
  for (const [text, hours] of cases) assertEquals(readTimeZone(text), hours, String(text));
});

Deno.test("readTimeZone() refuses what means two things and says the choices", () => {
  // Property: a name with several offsets is never guessed
  const cases: [string, readonly string[]][] = [
    ["IST", ["UTC+5:30", "UTC+2", "UTC+1"]],
    ["BST", ["UTC+6", "GMT"]],
    ["MT", ["MST"]],
    ["ET", ["EST"]],
    ["MDT", ["daylight-saving time", "MST", "UTC-7"]],
    ["CEST", ["daylight-saving time", "CET", "UTC+1"]],
  ];
  for (const [text, choices] of cases) {
    const { message } = assertThrows(() => readTimeZone(text), QuantityError);
    for (const choice of choices) assert(message.includes(choice), `${choice} in: ${message}`);
  }
  for (const text of ["XYZ", "", "UTC+", "UTC+6:75", "America/Denver", "6 h", "UTC-6 MST"]) {
    assertThrows(() => readTimeZone(text), QuantityError, "expected a time zone");
  }
});
