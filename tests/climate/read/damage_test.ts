import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { InputError } from "winterground/basics/mod.ts";
import { climateQuality, type ClimateYear, readClimate } from "winterground/climate/mod.ts";
import { tmy3Text } from "./layout_texts.ts";
import { sampleYear, SERIES } from "../sample.ts";

const TEXT = tmy3Text(sampleYear(3));
const CLEAN = readClimate(TEXT, { file: "t.csv" });
/** Notices of the sound file: its albedo column holds zeros. */
const USUAL = CLEAN.notices.length + climateQuality(CLEAN).notices.length;

function differing(year: ClimateYear): number {
  let count = 0;
  for (let hour = 0; hour < 8760; hour++) {
    if (SERIES.some((name) => year[name][hour] !== CLEAN[name][hour])) count++;
  }
  return count;
}

Deno.test("a damaged TMY3 file is refused or told, and never crashes the reader", () => {
  // Property: InputError, a notice, the same year, or one hour with another number that could be true;
  // the name of the station in line 1 is free text
  fc.assert(
    fc.property(
      fc.integer({ min: 60, max: TEXT.length - 1 }),
      fc.stringMatching(/^[ -~\r\n]{0,5}$/),
      fc.integer({ min: 0, max: 60 }),
      (at, junk, length) => {
        const damaged = TEXT.slice(0, at) + junk + TEXT.slice(at + length);
        let year: ClimateYear;
        try {
          year = readClimate(damaged, { file: "t.csv" });
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          assert(error.message.includes("t.csv"), error.message);
          return;
        }
        if (year.notices.length + climateQuality(year).notices.length > USUAL) return;
        assert(differing(year) <= 1, `at ${at}, ${length} characters for ${JSON.stringify(junk)}`);
      },
    ),
    { numRuns: 40, seed: 11 },
  );
});

Deno.test("a damaged head line is refused or changes nothing but the place", () => {
  // Property: never a crash of another kind
  const end = TEXT.indexOf("\n");
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: end - 1 }),
      fc.stringMatching(/^[ -~]{1,3}$/),
      (at, junk) => {
        const damaged = TEXT.slice(0, at) + junk + TEXT.slice(at + junk.length);
        try {
          assertEquals(readClimate(damaged, { file: "t.csv" }).dryBulb, CLEAN.dryBulb);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
        }
      },
    ),
    { numRuns: 40, seed: 11 },
  );
});
