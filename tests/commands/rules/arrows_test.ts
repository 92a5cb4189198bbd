import { assertEquals } from "@std/assert";
import { arrowFaults } from "../../../lib/commands/rules/arrows.ts";
import { circleFaults, circlesOf } from "../../../lib/commands/rules/circles.ts";
import { importsOf } from "../../../lib/commands/rules/import_graph.ts";

const one = (from: string, to: string) => arrowFaults(new Map([[from, [to]], [to, []]])).length;

Deno.test("arrowFaults() lets a chapter use earlier ones and refuses later ones", () => {
  // Property: each pair both ways
  for (
    const [later, earlier] of [
      ["house/year.ts", "soil/wave.ts"],
      ["store/compute.ts", "fan/laws.ts"],
      ["study/run/run.ts", "store/compute.ts"],
      ["show/soil/charts.ts", "soil/types.ts"],
      ["show/store/answer.ts", "show/house/answer.ts"],
      ["show/soil/charts.ts", "show/kit/figure.ts"],
      ["show/study/answer.ts", "show/store/answer.ts"],
      ["climate/summary.ts", "basics/mod.ts"],
    ] as const
  ) {
    assertEquals([one(later, earlier), one(earlier, later)], [0, 1], `${later} and ${earlier}`);
  }
});

Deno.test("arrowFaults() keeps the kit, the press and the public module to themselves", () => {
  // Property: limits of the order
  assertEquals(one("show/kit/table.ts", "study/mod.ts"), 1);
  assertEquals(one("show/kit/table.ts", "units/mod.ts"), 0);
  assertEquals(one("press/kernel.ts", "soil/wave.ts"), 1);
  assertEquals(one("soil/wave.ts", "mod.ts"), 1);
  assertEquals(one("soil/wave.ts", "attic/old.ts"), 1);
  assertEquals(one("soil/wave.ts", "commands/study.ts"), 1);
  assertEquals(one("commands/study.ts", "show/kit/table.ts"), 0);
});

Deno.test("circlesOf() finds what reaches itself and nothing else", () => {
  // Property: two circles, a tail into one of them, and a chain
  const graph = new Map([
    ["a", ["b"]],
    ["b", ["c"]],
    ["c", ["a"]],
    ["tail", ["a", "d"]],
    ["d", ["e"]],
    ["e", ["d", "f"]],
    ["f", []],
  ]);
  assertEquals(circlesOf(graph).sort(), [["a", "b", "c"], ["d", "e"]]);
});

Deno.test("circleFaults() finds rooms that use each other through different files", () => {
  // Property: no file is in a circle, the rooms are; a chapter's own folder is no room
  const rooms = new Map([
    ["store/air/march.ts", ["store/ground/mesh.ts"]],
    ["store/ground/site.ts", ["store/air/field.ts"]],
    ["store/ground/mesh.ts", ["store/types.ts"]],
    ["store/air/field.ts", []],
    ["store/types.ts", ["store/solver/engine.ts"]],
    ["store/solver/engine.ts", ["store/control.ts"]],
    ["store/control.ts", []],
  ]);
  assertEquals(circleFaults(rooms), ["rooms use each other: lib/store/air, lib/store/ground"]);
});

Deno.test("importsOf() reads imports, exports and types of files beside it", () => {
  // Property: every way of writing one; packages and data left aside
  const text = `import { a } from "../basics/mod.ts";
export { b } from "./b.ts";
import type { C } from "./c.ts";
const d = await import("./d.ts");
import "./e.ts";
import Plot from "@observablehq/plot";
import table from "../../data/t.csv" with { type: "text" };
`;
  const wanted = ["basics/mod.ts", "soil/b.ts", "soil/c.ts", "soil/d.ts", "soil/e.ts"];
  assertEquals(importsOf("soil/a.ts", text), wanted);
});
