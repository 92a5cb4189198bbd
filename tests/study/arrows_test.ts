import { assert, assertEquals } from "@std/assert";
import { arrowFaults } from "../../lib/commands/rules/arrows.ts";
import { circleFaults } from "../../lib/commands/rules/circles.ts";
import { showFaults } from "../../lib/commands/rules/display.ts";
import { readImports } from "../../lib/commands/rules/import_graph.ts";
import { PROJECT_FOLDER } from "../../lib/commands/terminal.ts";

const library = await readImports(`${PROJECT_FOLDER}/lib`);

Deno.test("the library's imports run one way and in no circle", () => {
  // Property: the order of design; enough imports are seen for the check to mean something
  assert(library.size > 200, `only ${library.size} files seen`);
  assertEquals(arrowFaults(library), []);
  assertEquals(circleFaults(library), []);
});

Deno.test("display code takes no function from the chapters that works anything out", async () => {
  // Property: all sums in chapters: types, constants, rows of data tables and units only
  assertEquals(await showFaults(`${PROJECT_FOLDER}/lib`), []);
});
