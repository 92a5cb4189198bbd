import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import { listNotebooks } from "winterground/commands/notebook_files.ts";
import {
  codeFaults,
  joinCells,
  outputDifferences,
  outputFaults,
} from "winterground/commands/notebook_rules.ts";
import { openNotebooks, ruleFaults } from "winterground/commands/check_notebooks.ts";
import type { Notebook } from "winterground/press/mod.ts";
import { tinyNotebook } from "../press/tiny.ts";

function texts(...sources: string[]): string[] {
  return codeFaults(tinyNotebook(...sources)).map((fault) => fault.text);
}

Deno.test("codeFaults() lets good cells pass", () => {
  // Property: no false alarm
  const good = [
    'import { show } from "winterground/mod.ts";',
    "const a = [1, 2]\n  .map((value) => value * 2);",
    'await show(\n  table([\n    ["a", 1],\n  ]),\n);',
    "const text = `\nconsole.log(show(function))\n`;",
    `import {\n${"  show,\n".repeat(25)}} from "winterground";\n\nconst d = 1;`,
    "const b = { c: 1 };\n// await show is the way to show\nawait show(`${b.c}`);",
  ];
  assertEquals(texts(...good), []);
});

Deno.test("codeFaults() finds each broken rule and names the cell", () => {
  // Property: one fault a rule
  const bad: [string, string][] = [
    ["a;", "last statement"],
    ["const a = 1;\na + 1;", "last statement"],
    ["await show(a);\nb();", "last statement"],
    ['console.log("x");\nconst a = 1;', "not console"],
    ["function f() {\n  return 1;\n}\nconst a = f();", "belong in lib"],
    ["class A {}\nconst a = new A();", "belong in lib"],
    ["const a = show(1);", "needs await"],
    ["// nothing", "empty"],
    [Array.from({ length: 21 }, (_, index) => `const a${index} = 1;`).join("\n"), "at most 20"],
  ];
  for (const [source, part] of bad) {
    const faults = codeFaults(tinyNotebook("# Text", source));
    assertEquals(faults.length, 1, source);
    assertEquals(faults[0]!.cell, 2);
    assertStringIncludes(faults[0]!.text, part);
  }
  const many = Array.from({ length: 26 }, () => "const a = 1;");
  assertStringIncludes(texts(...many).join(), "26 code cells");
});

function executed(): Notebook {
  const notebook = tinyNotebook("const a = 1;", "await show(a);");
  for (const [index, cell] of notebook.cells.entries()) {
    assert(cell.cell_type === "code");
    cell.execution_count = index + 1;
    if (index === 1) {
      const data = { "text/plain": "depth 2.46 m", "text/html": "<b>2.46 m</b>" };
      cell.outputs = [{ output_type: "display_data", data, metadata: {} }];
    }
  }
  return notebook;
}

Deno.test("outputFaults() wants a notebook executed in order with every output", () => {
  // Property: each way of not being executed is found
  assertEquals(outputFaults(executed()), []);
  assertEquals(outputFaults(tinyNotebook("const a = 1;")).length, 1);
  const lost = executed();
  assert(lost.cells[1]?.cell_type === "code");
  lost.cells[1].outputs = [];
  assertStringIncludes(outputFaults(lost)[0]?.text ?? "", "0 outputs for 1 calls");
  const [, good] = executed().cells;
  assert(good?.cell_type === "code");
  const stream = { output_type: "stream", name: "stdout", text: "x" } as const;
  lost.cells[1].outputs = [...good.outputs, stream];
  assertStringIncludes(outputFaults(lost)[0]?.text ?? "", "stream");
  lost.cells[1].execution_count = 5;
  assertStringIncludes(outputFaults(lost)[0]?.text ?? "", "5, not 2");
});

Deno.test("outputDifferences() finds a changed number and a changed picture, and nothing else", () => {
  // Property: equal runs give nothing; one changed sign gives its cell
  assertEquals(outputDifferences(executed(), executed()), []);
  for (const [type, value] of [["text/plain", "depth 2.47 m"], ["text/html", "<b>2.47 m</b>"]]) {
    const fresh = executed();
    assert(fresh.cells[1]?.cell_type === "code");
    const output = fresh.cells[1].outputs[0];
    assert(output?.output_type === "display_data");
    output.data[type!] = value;
    const faults = outputDifferences(executed(), fresh);
    assertEquals(faults.map((fault) => fault.cell), [2]);
    assertStringIncludes(faults[0]!.text, "2.46");
    assertStringIncludes(faults[0]!.text, "2.47");
  }
});

Deno.test("joinCells() keeps the order and knows the cell of each line", () => {
  // Property: lines by hand
  const { code, cells } = joinCells(tinyNotebook("# Text", "const a = 1;\nconst b = 2;", "a;"));
  assertEquals(code, "const a = 1;\nconst b = 2;\n\na;\n\nexport {};\n");
  assertEquals(cells, [2, 2, 2, 3, 3]);
});

Deno.test("the notebooks of the project keep the rules and are committed executed", async () => {
  // Property: rules hold for every notebook there is
  const notebooks = await openNotebooks(await listNotebooks());
  assertEquals(ruleFaults(notebooks), []);
});
