import { assert, assertEquals, assertLess } from "@std/assert";
import { REFINEMENTS, storeChapter, storeResolution } from "../../lib/store/mod.ts";
import { ownSite } from "../../lib/store/seasons/soil_model.ts";
import { baselineRequest } from "../../lib/store/baseline.ts";
import { standInRequest } from "./stand_in.ts";

const request = standInRequest({
  store: { slices: 1, spinUpYears: 0, outsideSoil: 2, meshDepth: 4 },
});
const refined = new Map(REFINEMENTS.map(({ name, refine }) => [name, refine(request)]));
const cellsOf = (of: typeof request) => ownSite(of).operator.capacity.length;

Deno.test("each refinement changes what it names and nothing else", () => {
  // Property: cells, steps, slices, soil around; the baseline is refined likewise
  assertEquals([...refined.keys()], ["cells", "steps", "slices", "domain"]);
  const cells = cellsOf(request);
  assert(cellsOf(refined.get("cells")!) > 2 * cells);
  assertEquals(cellsOf(refined.get("steps")!), cells);
  assertEquals(refined.get("steps")!.fineness!.steps![0], 900);
  assertEquals(ownSite(refined.get("slices")!).slices, 2);
  const { inputs } = refined.get("domain")!;
  assertEquals([inputs.outsideSoil, inputs.meshDepth], [4, 8]);
  assert(cellsOf(refined.get("domain")!) > cells);
  assertEquals(cellsOf(baselineRequest(refined.get("cells")!)), cellsOf(refined.get("cells")!));
});

Deno.test("storeResolution() finds nothing moved where nothing is finer, and little with shorter steps", () => {
  // Property: the same year to the bit; a step of second order moves the heats by less than 3 %
  const { heatIn, heatOut, savedHeat, coldestHour, coldestHourNoFan } = storeChapter(request);
  const plan = { heatIn, heatOut, savedHeat, coldestHour, coldestHourNoFan };
  const same = { name: "same", change: "nothing", refine: (of: typeof request) => of };
  const steps = REFINEMENTS.find(({ name }) => name === "steps")!;
  const { rows, largest, together } = storeResolution(request, plan, [same, steps]);
  assertEquals(rows[0]!.figures, plan);
  assertEquals(Object.values(rows[0]!.moved), [0, 0, 0, 0, 0]);
  const [, moved] = rows.map((row) => row.moved);
  for (const key of ["heatIn", "heatOut", "savedHeat"] as const) {
    assert(moved![key] !== 0, key);
    assertLess(Math.abs(moved![key]), 0.03 * plan[key], key);
    assertEquals(rows[1]!.shares[key], moved![key] / plan[key]);
    assertEquals([largest[key], together[key]], [Math.abs(moved![key]), Math.abs(moved![key])]);
  }
  assertLess(Math.abs(moved!.coldestHour), 0.3);
});
