import { assert, assertEquals } from "@std/assert";
import { assumedYears, houseChapter, usualAssumptions } from "../../lib/house/mod.ts";
import { HOUSE, simpleSoil, simpleYear } from "./fixtures.ts";

const air = (hour: number) =>
  -2 - 16 * Math.cos(2 * Math.PI * (hour / 8760 - 0.05)) -
  4 * Math.cos(2 * Math.PI * (hour % 24 - 4) / 24);
const climate = simpleYear({ temperature: air, sun: 0.7 });
const soil = simpleSoil(3, 12);
const house = { ...HOUSE, snowDepth: 0.3 };

Deno.test("assumedYears() puts the plan first, and more leaves make more frost hours and more heat", () => {
  // Property: direction over leaf areas of 0.5, 1, 2 and 4; the plan's row is the chapter's own, and
  // that of its own leaf area among the others is the same year
  const planned = houseChapter({ ...house, leafArea: 2 }, climate, soil);
  const rows = assumedYears({ ...house, leafArea: 2 }, climate, soil, planned);
  const leaves = rows.filter(({ about }) => about === "leaves");
  assertEquals(rows[0]!.about, "plan");
  assertEquals(leaves.length, 4);
  for (const [index, row] of leaves.slice(1).entries()) {
    const fewer = leaves[index]!;
    assert(row.hoursBelowFreezing >= fewer.hoursBelowFreezing, row.name);
    assert(row.heatDemand > fewer.heatDemand, row.name);
  }
  const same = leaves[2]!;
  assertEquals(same.hoursBelowFreezing, rows[0]!.hoursBelowFreezing);
  assertEquals(same.coldestHour, rows[0]!.coldestHour);
  assertEquals(same.heatDemand, rows[0]!.heatDemand);
});

Deno.test("usualAssumptions() tries only what the study does not have", () => {
  // Property: definition
  const about = (inputs: typeof house) => usualAssumptions(inputs).map((row) => row.about);
  assertEquals(about(house).length, 9);
  const full = {
    ...house,
    crop: "bare",
    bedCover: "straw",
    pathShare: 0.2,
    glazingSnow: "lies" as const,
    lightToAir: 0.1,
    wallAbsorptance: 0.3,
  };
  assertEquals(about(full), []);
});
