import { assert, assertEquals } from "@std/assert";
import { CHAPTERS } from "../../lib/study/mod.ts";
import { EXERCISES } from "../../lib/show/exercises.ts";
import { type Notebook, parseNotebook } from "../../lib/press/mod.ts";

const folder = new URL("../../notebooks/", import.meta.url);
const names = [...Deno.readDirSync(folder)].map((entry) => entry.name)
  .filter((name) => /^\d\d-.*\.ipynb$/.test(name)).sort();
const open = (name: string): Notebook =>
  parseNotebook(Deno.readTextFileSync(new URL(name, folder)), name);

// a number with the unit of a result; years, cell numbers and words stay allowed
const RESULT = /[\d.]+\s?(?:degC|degF|kWh|kW|Pa|W\/|m³|m²|mm\b|cfm|ft\b|K d|%)/;

Deno.test("notebooks are there in the order of the job", () => {
  // Property: one notebook a chapter, numbered
  const wanted = ["00-study", ...CHAPTERS.map(({ name }, index) => `0${index + 1}-${name}`)];
  wanted.forEach((start, index) => assert(names[index]?.startsWith(start), `${names[index]}`));
});

for (const name of names) {
  const notebook = open(name);
  const code = notebook.cells.filter((cell) => cell.cell_type === "code");
  const words = notebook.cells.filter((cell) => cell.cell_type === "markdown");

  Deno.test(`${name} says before each code cell what it does`, () => {
    // Property: text, then code
    notebook.cells.forEach((cell, index) => {
      if (cell.cell_type !== "code") return;
      assertEquals(notebook.cells[index - 1]?.cell_type, "markdown", `cell ${index + 1}`);
    });
  });

  Deno.test(`${name} has no number of the study in its text`, () => {
    // Property: the notebook is run with other climates; numbers come from cells
    for (const cell of words) {
      const found = RESULT.exec(cell.source);
      assertEquals(found, null, `"${found?.[0]}" in: ${cell.source.slice(0, 60)}`);
    }
  });

  Deno.test(`${name} starts with a title and a question and imports once`, () => {
    // Property: shape of a notebook
    const first = words[0]!.source;
    assert(/^# \S/.test(first), "title");
    assert(/\*\*[^*]+\?\*\*/.test(first), "question in bold");
    const imports = code.filter((cell) => /^import\b/m.test(cell.source));
    assertEquals(imports.length, 1);
    assertEquals(imports[0], code[0]);
  });

  Deno.test(`${name} leaves its exercises open and gives no answer away`, () => {
    // Property: null for the learner; no text or output holds a hint, a solution or an explanation
    const whole = notebook.cells.map((cell) =>
      cell.cell_type === "code"
        ? `${cell.source}\n${
          cell.outputs.map((output) => "data" in output ? output.data["text/plain"] : "").join("\n")
        }`
        : cell.source
    ).join("\n");
    for (const [, id, given] of whole.matchAll(/\bexercise\("([^"]+)", (\w+)\)/g)) {
      assert(
        given === "null" || new RegExp(`\\bconst ${given}: [^=]*= null;`).test(whole),
        `${id} is answered`,
      );
      const one = EXERCISES.find((exercise) => exercise.id === id)!;
      const told = [
        ...one.hints!,
        one.solution!,
        one.explanation,
        ...one.slips.map((slip) => slip.hint),
      ];
      for (const words of told) assert(!whole.includes(words), `${id}: ${words}`);
    }
  });

  if (!CHAPTERS.some((chapter) => name.slice(3).startsWith(chapter.name))) continue;
  Deno.test(`${name} ends with answer, cautions, two exercises and sources`, () => {
    // Property: shape of a chapter's notebook
    const all = code.map((cell) => cell.source).join("\n");
    assert(/\bshow\(\w+\.answer\(/.test(all), "answer");
    assert(/\bcaution\("\w+"\)/.test(all), "cautions");
    assert([...all.matchAll(/\bexercise\("/g)].length >= 2, "two exercises");
    assert(words.at(-1)!.source.includes("## Sources"), "sources");
  });
}
