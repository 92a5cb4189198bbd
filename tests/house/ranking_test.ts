import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { houseMeasures, rankMeasures } from "../../lib/house/mod.ts";
import { HOUSE, simpleSoil, simpleYear } from "./fixtures.ts";

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

Deno.test("rankMeasures() puts the house as it is first, then the best saving", () => {
  // Property: order, arithmetic, and the sign that physics gives sealing and a curtain.
  const climate = simpleYear({
    temperature: (hour) => 2 - 17 * Math.cos(2 * Math.PI * (hour / 8760 - 0.05)),
    sun: 0.4,
  });
  const inputs = { ...HOUSE, curtain: null, glazing: "single-glass" };
  const wanted = houseMeasures(inputs).filter((measure) =>
    measure.name === "sealing" || measure.name === "night curtain"
  );
  const rows = rankMeasures(inputs, climate, simpleSoil(4, 12), wanted);
  assertEquals(rows.map((row) => row.name), ["as it is", "night curtain", "sealing"]);
  const base = rows[0]!;
  for (const row of rows.slice(1)) {
    assert(row.saved > 0 && row.coldestHourGain > 0, `${row.name} ${row.saved}`);
    assertAlmostEquals(row.heatDemand + row.saved, base.heatDemand, 1e-9 * base.heatDemand);
    assertAlmostEquals(row.savedShare, row.saved / base.heatDemand, 1e-12);
  }
});
