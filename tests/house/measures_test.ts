import { assertEquals } from "@std/assert";
import { houseMeasures } from "../../lib/house/mod.ts";
import { HOUSE } from "./fixtures.ts";

Deno.test("houseMeasures() offers what the house lacks and nothing it has", () => {
  // Property: each measure changes the inputs it names.
  const poor = {
    ...HOUSE,
    glazing: "single-film",
    northWall: "glazed",
    northRoof: "glazed",
    kneeWallHeight: 0,
    edgeInsulation: 0,
    edgeInsulationDepth: 0,
    curtain: null,
  } as const;
  const names = houseMeasures(poor).map((measure) => measure.name);
  assertEquals(names, [
    "sealing",
    "one more layer of glazing",
    "knee-wall insulation",
    "north wall insulation",
    "north roof insulation",
    "perimeter foam",
    "night curtain",
    "water barrels",
  ]);
  const good = houseMeasures({ ...HOUSE, glazing: "triple-wall-16mm" }).map((m) => m.name);
  assertEquals(good, ["sealing", "knee-wall insulation", "curtain edges sealed", "water barrels"]);
});
