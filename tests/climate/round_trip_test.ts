import { assert, assertEquals } from "@std/assert";
import fc from "fast-check";
import { InputError } from "winterground/basics/mod.ts";
import {
  climateQuality,
  type ClimateYear,
  parseColumns,
  readClimate,
} from "winterground/climate/mod.ts";
import { sampleYear, SERIES, withSeries } from "./sample.ts";
import { writeClimate } from "../support/write_climate.ts";

function readBack(table: string, columns: string): ClimateYear {
  return readClimate(table, { file: "year.csv", columns: parseColumns(columns, "year.yaml") });
}

Deno.test("a year that was written is read back the same, to the last bit", () => {
  // Property: reading is the inverse of writing, whatever the seed and the series present
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), fc.boolean(), (seed, extra) => {
      const made = sampleYear(seed);
      const year = !extra ? made : {
        ...made,
        skyLongwave: made.dryBulb.map((value) => 250 + 3 * value),
        albedo: made.relativeHumidity.map((value) => value / 2),
      };
      const { table, columns } = writeClimate(year);
      const back = readBack(table, columns);
      for (const name of [...SERIES, "skyLongwave", "albedo"] as const) {
        assertEquals(back[name], year[name], name);
      }
      assertEquals(back.place, year.place);
      assertEquals(back.notices, []);
    }),
    { numRuns: 3, seed: 1 },
  );
});

/** A year of short numbers, so that a damaged digit matters. */
function shortYear(): ClimateYear {
  return withSeries(sampleYear(2), SERIES, (value) => Number(value.toPrecision(4)));
}

type Damage = (text: string, at: number, with_: string) => string;

const DAMAGES: Readonly<Record<string, Damage>> = {
  "a character lost": (text, at) => text.slice(0, at) + text.slice(at + 1),
  "characters put in": (text, at, junk) => text.slice(0, at) + junk + text.slice(at),
  "characters written over": (text, at, junk) =>
    text.slice(0, at) + junk + text.slice(at + junk.length),
  "the end cut off": (text, at) => text.slice(0, at),
  "a line lost": (text, at) =>
    text.slice(0, text.lastIndexOf("\n", at) + 1) +
    text.slice(text.indexOf("\n", at) + 1),
  "a line doubled": (text, at) => {
    const [from, to] = [text.lastIndexOf("\n", at) + 1, text.indexOf("\n", at) + 1];
    return text.slice(0, to) + text.slice(from, to) + text.slice(to);
  },
  "a piece moved": (text, at, junk) => {
    const length = 40 * junk.length;
    const piece = text.slice(at, at + length);
    return text.slice(0, at) + text.slice(at + length) + piece;
  },
};

/** Hours at which two years differ in any series. */
function differingHours(one: ClimateYear, other: ClimateYear): number {
  let count = 0;
  for (let hour = 0; hour < 8760; hour++) {
    if (SERIES.some((name) => one[name][hour] !== other[name][hour])) count++;
  }
  return count;
}

Deno.test("a damaged file is refused or told, and never crashes the reader", () => {
  // Property: the outcome is an InputError, a notice, the same year, or one hour with another number
  // that could be true there (which no reader can know)
  const original = shortYear();
  const { table, columns } = writeClimate(original);
  const clean = readBack(table, columns);
  let refused = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...Object.keys(DAMAGES)),
      fc.integer({ min: 0, max: table.length - 2 }),
      fc.stringMatching(/^[ -~\n]{1,6}$/),
      (kind, at, junk) => {
        const damaged = DAMAGES[kind]!(table, at, junk);
        let year: ClimateYear;
        try {
          year = readBack(damaged, columns);
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
          assert(error.message.startsWith("year."), error.message);
          refused++;
          return;
        }
        if (year.notices.length + climateQuality(year).notices.length > 0) return;
        assert(differingHours(year, clean) <= 1, `${kind} at ${at} with ${JSON.stringify(junk)}`);
      },
    ),
    { numRuns: 50, seed: 7 },
  );
  assert(refused > 15, `only ${refused} of 50 damaged files were refused`);
});

Deno.test("a damaged columns file is refused, and never crashes the reader", () => {
  // Property: parseColumns throws InputError or gives columns that read without a crash
  const { columns } = writeClimate(sampleYear());
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: columns.length - 1 }),
      fc.stringMatching(/^[ -~\n]{1,4}$/),
      (at, junk) => {
        try {
          parseColumns(columns.slice(0, at) + junk + columns.slice(at + junk.length), "year.yaml");
        } catch (error) {
          if (!(error instanceof InputError)) throw error;
        }
      },
    ),
    { numRuns: 100, seed: 3 },
  );
});
