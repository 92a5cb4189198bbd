import { assert, assertEquals } from "@std/assert";
import { notice } from "../../../lib/basics/mod.ts";
import { answerCard } from "../../../lib/show/kit/answer.ts";
import { caution, CAUTIONS, cautionsOf, notices } from "../../../lib/show/kit/caution.ts";
import { CHAPTERS } from "../../../lib/study/mod.ts";
import { numbers, table } from "../../../lib/show/kit/table.ts";

Deno.test("every chapter has cautions, each with whom to defer to and a source", () => {
  // Property: no step without its caution
  for (const { name: chapter } of CHAPTERS) {
    assert(cautionsOf(chapter).length >= 1, chapter);
    assert(caution(chapter)["text/plain"].includes("Local codes and law govern"));
  }
  for (const one of CAUTIONS) {
    for (const text of [one.hazard, one.text, one.deferTo, one.source]) assert(text.length > 3);
  }
});

Deno.test("hazards that can kill stand beside the step where they are met", () => {
  // Property: the cautions named for the job are there
  const words = (chapter: Parameters<typeof caution>[0]) =>
    caution(chapter)["text/plain"].toLowerCase();
  for (const word of ["trench", "services", "footing"]) assert(words("soil").includes(word), word);
  for (const word of ["carbon monoxide", "mould"]) assert(words("house").includes(word), word);
  for (const word of ["legionella", "radon", "saw"]) assert(words("tubes").includes(word), word);
  for (const word of ["electrician", "guards"]) assert(words("fan").includes(word), word);
});

Deno.test("table() gives SI and US columns with units in the head", () => {
  // Property: both systems, plain text in line with HTML
  const item = table([{ depth: 1 }], [{ head: "depth", value: (row) => row.depth, kind: "depth" }]);
  assert(item["text/html"].includes("depth, m</th>"));
  assert(item["text/html"].includes("depth, ft</th>"));
  assert(item["text/html"].includes(">3.28</td>"));
  assertEquals(item["text/plain"], "depth, m  depth, ft\n    1.00       3.28");
});

Deno.test("numbers() shows a dash for what does not apply", () => {
  // Property: null is not zero
  const item = numbers([{ label: "first frost", value: null }, {
    label: "x",
    value: 0.5,
    kind: "share",
  }]);
  assert(/first frost\s+–/.test(item["text/plain"]));
  assert(item["text/plain"].includes("50\u00a0%"));
});

Deno.test("notices() shows cautions first, each text once, and escapes markup", () => {
  // Property: order, no doubles, no injection
  const item = notices([
    notice("info", "soil", "a <b>"),
    notice("caution", "fan", "guard"),
    notice("info", "soil", "a <b>"),
  ]);
  assertEquals(item["text/plain"], "Caution, fan: guard\nNote, soil: a <b>");
  assert(item["text/html"].includes("a &lt;b&gt;"));
  assert(notices([])["text/plain"].startsWith("No notices"));
});

Deno.test("answer() says its light as a word, not by colour alone", () => {
  // Property: accessible
  const item = answerCard({
    answer: "It freezes.",
    drivenBy: "sun",
    changesWith: "curtain",
    light: "no",
  });
  assert(item["text/html"].includes("<strong>no</strong>"));
  assert(item["text/plain"].startsWith("[no] The answer: It freezes."));
  assert(item["text/plain"].includes("Would change if: curtain"));
});
