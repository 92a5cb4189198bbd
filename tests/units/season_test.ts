import { assert, assertEquals, assertThrows } from "@std/assert";
import {
  hourOfClock,
  QuantityError,
  readClockSpan,
  readSeason,
  seasonDays,
} from "winterground/units/mod.ts";

Deno.test("readSeason() takes a span of days as people write it", () => {
  // Property: one span, several ways to write it
  for (
    const text of [
      "15 Aug to 30 Apr",
      "15 August - 30 April",
      "Aug 15 to Apr 30",
      "15. aug until 30. apr",
      "august 15 – april 30",
    ]
  ) {
    assertEquals(readSeason(text), "15 Aug to 30 Apr", text);
  }
  assertEquals(readSeason("All Year"), "all year");
  assertEquals(readSeason("never"), "never");
});

Deno.test("readSeason() refuses what is no span of days, and says what it wants", () => {
  // Property: harm
  for (
    const text of [
      "",
      "summer",
      "15 Aug",
      "31 Feb to 3 Mar",
      "40 Aug to 3 Sep",
      "29 Feb to 1 Mar",
      7,
    ]
  ) {
    const error = assertThrows(() => readSeason(text), QuantityError);
    assert(/15 Aug to 30 Apr/.test(error.message), error.message);
  }
});

Deno.test("seasonDays() counts both ends and goes over the turn of the year", () => {
  // Source: calendar: 15 August is day 227, 30 April day 120 of a year of 365 days (from memory)
  const winter = seasonDays("15 Aug to 30 Apr");
  assertEquals(winter.filter((open) => open === 1).length, 365 - 227 + 1 + 120);
  assertEquals([winter[225], winter[226], winter[119], winter[120]], [0, 1, 1, 0]);
  assertEquals([...seasonDays("1 Jun to 1 Jun").entries()].filter(([, open]) => open), [[151, 1]]);
  assert(seasonDays("all year").every((open) => open === 1));
  assert(seasonDays("never").every((open) => open === 0));
});

Deno.test("readClockSpan() takes two times of the day", () => {
  // Property: one span, several ways to write it
  for (const text of ["17:00 to 8:30", "17 h to 8:30", "5 pm to 8:30 am", "17:00-08:30"]) {
    assertEquals(readClockSpan(text), "17:00 to 8:30", text);
  }
  assertEquals(readClockSpan("none"), "none");
  assertEquals(hourOfClock("8:30"), 8.5);
  for (const text of ["17:00", "25:00 to 3:00", "8:00 to 8:00", "dusk to dawn", 12]) {
    const error = assertThrows(() => readClockSpan(text), QuantityError);
    assert(/17:00 to 8:00/.test(error.message), error.message);
  }
});
