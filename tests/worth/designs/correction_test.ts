// Property: what years that were run say of designs that were not
import { assert, assertAlmostEquals } from "@std/assert";
import { ALL_KEYS, ownChoice } from "../../../lib/worth/designs/choices.ts";
import { correction } from "../../../lib/worth/designs/correction.ts";
import { demoQuestion, drawnDesigns } from "./demo.ts";
import type { BuiltDesign } from "../../../lib/worth/designs/judge.ts";
import { madeUpYear } from "./made_up_year.ts";

const own = ownChoice(demoQuestion);
const drawn = drawnDesigns(demoQuestion, 80, ALL_KEYS);
const year = madeUpYear(demoQuestion);
const knownOf = (design: BuiltDesign) => {
  const { choice, estimate } = design;
  return { choice, estimate, year: { ...year(design), fanEnergy: 1.1 * estimate.fanEnergy } };
};

const ownKnown = (saved: number, hours: number) => ({
  choice: own,
  estimate: { saved: 4000, fanEnergy: 1500 },
  year: { saved, hours, fanEnergy: 1200 },
});

Deno.test("after 40 years of a made-up truth 40 others are foretold with a quarter of the estimate's error", () => {
  const known = drawn.map(knownOf);
  const foretell = correction([
    ownKnown(4000, 20),
    ...known.slice(0, 40),
  ]);
  const rms = (error: (one: typeof known[number]) => number) =>
    Math.sqrt(known.slice(40).reduce((sum, one) => sum + error(one) ** 2, 0) / 40);
  const before = rms(({ estimate, year }) => estimate.saved - year.saved);
  const after = rms((one) => foretell(one).saved - one.year.saved);
  assert(after < before / 4, `${after} against ${before}`);
});

Deno.test("one year alone moves all estimates by its ratio", () => {
  const foretell = correction([ownKnown(3000, 7)]);
  const other = drawn[0]!;
  const { saved, hours, fanEnergy } = foretell(other);
  assertAlmostEquals(saved, 0.75 * other.estimate.saved, 1e-6);
  assertAlmostEquals(hours, 7, 1e-6);
  assertAlmostEquals(fanEnergy, 0.8 * other.estimate.fanEnergy, 1e-6);
});
