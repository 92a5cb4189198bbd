import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { headers as headersPart } from "../../lib/headers/chapter.ts";
import {
  balanceStudy,
  blockedTubes,
  carelessEnds,
  headerVariants,
  layoutVariants,
  summariseHeaders,
  wantedHeaders,
  workmanshipStudies,
} from "../../lib/headers/mod.ts";
import { tubes as tubesPart } from "../../lib/tubes/chapter.ts";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";

const study = await openStudy(defaultStudyPath());
const tubes = tubesPart.compute(tubesPart.takes(study, {}));
const question = headersPart.takes(study, { tubes });
const headers = headersPart.compute(question);

Deno.test("headerVariants() get more even with the size, in every layout", () => {
  // Property: wider header, more even tubes
  const variants = headerVariants(question);
  for (const layout of ["Z", "U", "centre"]) {
    const rows = variants.filter((row) => row.layout === layout);
    assert(rows.length >= 5);
    for (let i = 1; i < rows.length; i++) {
      assert(rows[i]!.unevenness < rows[i - 1]!.unevenness, `${layout} ${rows[i]!.diameter}`);
    }
  }
});

Deno.test("carelessEnds() draws the same fields every time and makes them less even", () => {
  // Property: seeded; the poorest tube gets less than with flush ends
  const first = carelessEnds(question);
  assertEquals(carelessEnds(question), first);
  assert(first.flowMin.low <= first.flowMin.high && first.flowMin.mean < 1);
  assert(first.flowMax.mean > 1);
});

Deno.test("layoutVariants() holds the study's own layout and ranks Z behind the middle", () => {
  // Property: agrees with the chapter; both headers' pressure changes add up in a Z
  const variants = layoutVariants(question);
  const of = (layout: string) => variants.find((one) => one.layout === layout)!.result;
  assertAlmostEquals(of(study.headers.layout).flowMin, headers.flowMin, 1e-9);
  assert(of("Z").unevenness > of("centre").unevenness);
});

Deno.test("wantedHeaders() asks for wider headers for more evenness", () => {
  // Property: monotone, and the evenness wanted is reached
  const rows = wantedHeaders(question);
  for (const layout of new Set(rows.map((row) => row.layout))) {
    const [loose, tight] = rows.filter((row) => row.layout === layout);
    assert(loose!.unevenness > tight!.unevenness);
    assert(loose!.sized!.diameter <= tight!.sized!.diameter + 1e-9);
    for (const row of [loose!, tight!]) assert(row.sized!.unevenness <= row.unevenness + 1e-9);
  }
});

Deno.test("workmanshipStudies() cost most where least care was taken", () => {
  // Property: order of heat at held pressure; flanged ends are the measure of all
  const heat = workmanshipStudies(question).map(({ result }) => result.heatAtEqualPressure.mean);
  assertAlmostEquals(heat[0]!, 1, 1e-9);
  assert(heat[1]! < heat[0]! && heat[2]! < heat[1]!);
});

Deno.test("blockedTubes() gives the air of flooded tubes to the others at more pressure", () => {
  // Property: conservation: the open tubes carry count over open of the mean, on average
  const [clean, first, , many] = blockedTubes(question);
  assertEquals(clean!.heat, 1);
  const count = tubes.count / study.headers.groups;
  const mean = count / (count - 1);
  assert(first!.flowMin < mean && first!.flowMax > mean);
  assert(many!.pressureDrop > first!.pressureDrop && first!.pressureDrop > clean!.pressureDrop);
  assert(many!.heat < first!.heat);
});

Deno.test("balanceStudy() gives the poorest tube no plate and costs pressure", () => {
  // Property: definition of balancing orifices
  const { tubes: rows, plates, pressureBefore, pressureAfter } = balanceStudy(question);
  const shares = rows.map((row) => row.share);
  const poorest = rows[shares.indexOf(Math.min(...shares))]!;
  assertEquals(poorest.hole, null);
  assertEquals(plates, rows.filter((row) => row.hole !== null).length);
  for (const { hole } of rows) assert(hole === null || hole < tubes.diameter);
  assert(pressureAfter > pressureBefore);
});

Deno.test("summariseHeaders() keeps the field's air and counts tubes more than a tenth off", () => {
  // Property: shares of 0.88, 1 and 1.12 by hand
  const { summary } = summariseHeaders({
    ...headers,
    shares: Float64Array.of(1, 0.88, 1.12),
    supplyPressure: Float64Array.of(30, 29, 31),
    returnPressure: Float64Array.of(5, 5, 4),
  }, { positions: [0, 1, 2].map((x) => ({ x, depth: 0.6 })), flowPerTube: 0.02 });
  assertEquals([summary.outside, summary.poorest], [2, 2]);
  assertAlmostEquals(summary.tubes.reduce((sum, tube) => sum + tube.flow, 0), 0.06, 1e-12);
  assertEquals(summary.tubes.map((tube) => tube.across), [25, 24, 27]);
});
