import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import { exerciseCells, learnerOf } from "winterground/commands/site/editions.ts";
import { escapeHtml } from "winterground/press/markdown.ts";
import { lessonBody } from "winterground/press/site/mod.ts";
import { exercise, EXERCISES } from "winterground/show/exercises.ts";
import type { CodeCell } from "winterground/press/mod.ts";
import { notebookOf, shown } from "../../press/site/tiny_site.ts";

const KNOWN = new Map(EXERCISES.map((one) => [one.id, one]));

/** A cell in which a learner has answered. */
function answered(id: string, given: string): CodeCell {
  const html = String(exercise(id, given)["text/html"]);
  return shown(`const mine = "${given}";\nawait show(exercise("${id}", mine));`, html);
}

Deno.test("the edition for students holds the question and nothing that a learner or author answered", () => {
  // Property: each exercise of the project, answered with its solution and with the right value
  for (const { id, question, solution, explanation, slips } of EXERCISES) {
    const cells = [answered(id, "solution"), answered(id, "hint"), answered(id, "7.125 kWh")];
    const { html } = lessonBody(notebookOf(cells), exerciseCells("student", KNOWN));
    assertStringIncludes(html, escapeHtml(question));
    for (const text of [solution!, explanation, ...slips.map(({ hint }) => hint), "7.125"]) {
      assert(!html.includes(escapeHtml(text)), `${id} gives away: ${text}`);
    }
    assert(!html.includes("const mine"), id);
  }
});

Deno.test("the edition for instructors holds the worked solution of every exercise", () => {
  // Property: each exercise of the project
  for (const { id, question, solution, explanation } of EXERCISES) {
    const { html } = lessonBody(
      notebookOf([answered(id, "hint")]),
      exerciseCells("instructor", KNOWN),
    );
    for (const text of [question, solution!, explanation]) {
      assertStringIncludes(html, escapeHtml(text));
    }
  }
});

Deno.test("an exercise that came there in another way is left out, and so is the count of right answers", () => {
  // Property: the id in a variable, an unknown id, a score
  const html = String(exercise(EXERCISES[0]!.id, "solution")["text/html"]);
  const cells = [
    shown("await show(asked);", html),
    shown('await show(exercise("none.such", "4 m"));', ""),
    shown("await show(await lesson.score());", "<p>3 of 4 right</p>"),
    shown("await show(chart);", "<p>stays</p>"),
  ];
  const made = lessonBody(notebookOf(cells), exerciseCells("student", KNOWN)).html;
  assert(!made.includes(escapeHtml(EXERCISES[0]!.solution!)) && !made.includes("3 of 4"));
  assert(!made.includes("4 m"));
  assertStringIncludes(made, "Exercise none.such is not among");
  assertStringIncludes(made, "<p>stays</p>");
});

Deno.test("learnerOf() reads the name that a lesson draws its numbers by", () => {
  // Property: given, empty, absent
  const named = (code: string) => learnerOf(notebookOf([shown(code, "")]));
  assertEquals(named('const learner = "Ada";'), "Ada");
  assertEquals(named('const learner: string = "";'), "");
  assertEquals(named("const other = 1;"), "");
});
