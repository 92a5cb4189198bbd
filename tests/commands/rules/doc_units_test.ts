import { assert, assertEquals } from "@std/assert";
import { type DocPages, unitFaults } from "../../../lib/commands/rules/doc_units.ts";
import { namesUnit, saysUnit } from "../../../lib/commands/rules/unit_words.ts";
import { runDeno } from "../../../lib/commands/run_deno.ts";

async function faultsOf(code: string): Promise<string[]> {
  const file = await Deno.makeTempFile({ suffix: ".ts" });
  try {
    await Deno.writeTextFile(file, code);
    const { text } = await runDeno(["doc", "--quiet", "--json", file]);
    return unitFaults(JSON.parse(text) as DocPages, () => "t.ts").map((one) =>
      one.replace(/^t\.ts:\d+: | has no unit in its doc comment$/g, "")
    );
  } finally {
    await Deno.remove(file);
  }
}

Deno.test("saysUnit() knows units, shares and counts, and is not taken in by words", () => {
  // Property: both sides
  for (
    const words of [
      "m",
      "W/(m² K)",
      "depth in m",
      "degC",
      "1/h",
      "share, 0 to 1",
      "number of tubes",
    ]
  ) {
    assert(saysUnit(words), words);
  }
  for (const words of ["", "the depth", "the fan's value", "of the sheet", "name m_1", "a.m"]) {
    assert(!saysUnit(words), words);
  }
  assert(namesUnit("kWh a year") && !namesUnit("number of tubes"));
});

Deno.test("unitFaults() names parameters and results without a unit", async () => {
  // Property: said, unsaid, said in the sentence, not a number
  const found = await faultsOf(`
/**
 * One.
 * @param depth below the surface
 * @param time s
 * @param name of it
 */
export function one(depth: number, time: number, name: string): number {
  return depth * time * name.length;
}
/** Two, W from m. */
export function two(depth: number): number { return depth; }
`);
  assertEquals(found, ['one: "depth"']);
});

Deno.test("unitFaults() names numeric fields of public types, alone or in series", async () => {
  // Property: a type's own words hold for its fields; text carries its unit itself
  const found = await faultsOf(`
/** Depths. */
export interface A {
  /** deep */
  readonly deep: number;
  /** many of them */
  readonly series: readonly Float64Array[];
  /** m */
  readonly wide: number | null;
  /** with its unit */
  readonly text: string | number;
}
/** Heat, kWh. */
export interface B {
  /** through the roof */
  readonly roof: number;
}
/** What is taken. */
export const TAKEN: number = 3;
`);
  assertEquals(found, ['A: field "deep"', 'A: field "series"', "TAKEN: its value"]);
});
