import { assert, assertEquals } from "@std/assert";
import { displayFaults } from "../../../lib/commands/rules/display.ts";

const faults = (text: string, path = "show/store/charts.ts") => displayFaults(path, text).length;

Deno.test("displayFaults() lets types, constants, rows of tables and formatters through", () => {
  // Property: what display code needs
  assertEquals(faults('import type { StoreResult } from "../../store/types.ts";'), 0);
  assertEquals(faults('import { type HouseWay, INTAKE_BAND } from "../../store/mod.ts";'), 0);
  assertEquals(faults('import { findCrop } from "../../house/mod.ts";'), 0);
  assertEquals(faults('import { showSi } from "../../units/mod.ts";'), 0);
  assertEquals(faults('import { ticks } from "d3-array";'), 0);
  assertEquals(faults('import * as Plot from "@observablehq/plot";'), 0);
  assertEquals(faults('export { storeWeek } from "../../store/mod.ts";'), 0);
});

Deno.test("displayFaults() refuses sums, physics and the insides of a chapter", () => {
  // Property: every way that sums came into display code
  assertEquals(faults('import { hoursBelow, KELVIN } from "../../basics/mod.ts";'), 1);
  assertEquals(faults('import {\n  mean,\n  sum,\n} from "d3-array";'), 2);
  assertEquals(faults('import * as house from "../../house/mod.ts";'), 1);
  assertEquals(faults('import { storeChapter } from "../../store/mod.ts";'), 1);
  assertEquals(faults('import { LIMITS } from "../../store/summary.ts";'), 1);
  assertEquals(faults('import { dewPoint } from "../../air/mod.ts";'), 1);
  const exercise = faults(
    'import { dewPoint } from "../../air/mod.ts";',
    "show/house/exercises.ts",
  );
  assertEquals(exercise, 0);
});

Deno.test("displayFaults() names file, function and what to do", () => {
  // Property: form of the message
  const [first] = displayFaults(
    "show/soil/answer.ts",
    'import { fitWave } from "../../soil/mod.ts";',
  );
  assert(first!.startsWith("lib/show/soil/answer.ts: takes fitWave from soil/mod.ts"), first);
});
