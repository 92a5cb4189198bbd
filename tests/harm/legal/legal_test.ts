/** A share of the standing attack with random legal studies; `run.ts` runs the whole. @module */
import { assert, assertEquals } from "@std/assert";
import { inTemporary } from "../../harness/in_temporary.ts";
import { noteTrials, WHOLE } from "../test_attacks.ts";
import { attack, type Depth, writeNamedFiles } from "./attack.ts";
import { studies, takeThrough } from "./run.ts";
import { CORNERS, legalStudies, type StudyData, studyOf } from "./study.ts";

/** True where the whole attack is asked for. */
const TRIED = Deno.env.get(WHOLE) !== undefined;
const SKIPPED = " (only by the task harm)";

/** Changed now and then, so that other studies come up. */
const SEED = 11;

async function outcomes(list: readonly StudyData[], depth: Depth) {
  return await inTemporary(async (folder) => {
    await writeNamedFiles(folder);
    const found = [];
    for (const data of list) found.push({ data, ...await attack(data, folder, depth) });
    return found;
  });
}

async function assertSound(list: readonly StudyData[], depth: Depth, leastRan: number) {
  const found = await outcomes(list, depth);
  const faults = found.filter(({ kind }) => kind === "fault");
  assertEquals(faults.map(({ lines, data }) => ({ lines, data })), []);
  const ran = found.filter(({ kind }) => kind === "ran").length;
  assert(ran >= leastRan, `only ${ran} of ${list.length} ran`);
}

Deno.test("legal studies at the ends of what can be computed run up to the drawings, or are refused with their line", async () => {
  // Property: finite figures without contradiction, or a refusal with file and line
  await assertSound(Object.values(CORNERS).map(studyOf), "fan", 10);
});

Deno.test("random legal studies run up to fan and drawings, or are refused with their line", async () => {
  // Property: finite figures without contradiction, or a refusal with file and line
  await assertSound(legalStudies(40, SEED), "fan", 15);
});

Deno.test({
  name: "five hundred random legal studies, with the years of some" + (TRIED ? "" : SKIPPED),
  ignore: !TRIED,
  async fn() {
    // Property: finite figures without contradiction, or a refusal with file and line
    const { ran, refused, faults } = await takeThrough(studies(500, SEED));
    const words = `500 studies: ${ran} ran with all that must hold, ${refused} refused`;
    await noteTrials(500, `${words}, ${faults.length} did not hold`);
    assertEquals(faults, []);
  },
});

Deno.test("a random legal study runs through the house's year with closed balances", async () => {
  // Property: finite figures without contradiction, balances closed
  await assertSound([studyOf(CORNERS["no insulation"]!)], "house", 1);
});

Deno.test("studies that were computed far before they failed are refused with their line", async () => {
  // Property: what follows from the inputs alone is refused before a year is computed
  const cases: readonly [changes: Parameters<typeof studyOf>[0], words: RegExp][] = [
    [{ "soil.moisture": "50 %" }, /:\d+:\d+: Cannot fit 50.0.% by volume of water in loam/],
    [{ "soil.texture": "peat", "soil.dryDensity": "1700 kg/m3" }, /:\d+:\d+: Cannot use dry dens/],
    [
      { "soil.layers": [{ thickness: "1 m", texture: "clay", moisture: "80 %" }] },
      /:\d+:\d+: Cannot fit 80.0.% by volume of water in clay/,
    ],
    [{ "house.length": "1 m", "house.width": "1 m" }, /:\d+:\d+: "tubes.length" is not given/],
    [{
      "house.length": "1000 m",
      "house.width": "8 m",
      "tubes.direction": "across",
      "headers.layout": "centre",
      "fan.fan": "booster-250",
    }, /:\d+:\d+: .*Cannot find the operating point/],
  ];
  const found = await outcomes(cases.map(([changes]) => studyOf(changes)), "fan");
  for (const [index, { kind, lines }] of found.entries()) {
    assertEquals(kind, "refused", lines.join("\n"));
    assert(cases[index]![1].test(lines[0]!), lines[0]);
  }
});

Deno.test("a house of a kilometre is drawn", async () => {
  // Property: the largest house that the schema allows fits a sheet
  const data = studyOf({
    "house.length": "1000 m",
    "tubes.length": "40 m",
    "tubes.count": 20,
    "tubes.airFlow": "0.5 m3/s",
    "house.width": "8 m",
  });
  const [{ kind, lines } = { kind: "", lines: [] }] = await outcomes([data], "fan");
  assertEquals(kind, "ran", lines.join("\n"));
});
