import { assert, assertEquals } from "@std/assert";
import { CHAPTERS, defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { answer as fanAnswer } from "../../lib/show/fan/answer.ts";
import { answer as headersAnswer } from "../../lib/show/headers/answer.ts";
import { answer as houseAnswer, freezingText, frostLight } from "../../lib/show/house/answer.ts";
import { figureTexts } from "../../lib/show/study/figures_table.ts";
import { inputRows } from "../../lib/show/study/inputs.ts";
import * as sample from "./sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("frostLight() says yes only where no hour freezes, no above a twentieth of the year", () => {
  // Property: the limits the documentation states
  assertEquals(frostLight(0), "yes");
  assertEquals(frostLight(1), "partly");
  assertEquals(frostLight(437), "partly");
  assertEquals(frostLight(438), "no");
});

Deno.test("freezingText() says so where a kelvin colder would not freeze either", () => {
  // Property: words follow the numbers
  assertEquals(freezingText({ warmer: 0, colder: 0 }).includes("not freeze in either case"), true);
  const both = freezingText({ warmer: 1100, colder: 1500 }).replaceAll(/[\u00a0\u202f]/g, " ");
  assert(both.includes("1100 h to 1500 h"), both);
});

Deno.test("houseAnswer() takes the leakage at half and at twice its value", () => {
  // Property: 570 W/K with 110 W/K of leakage gives 515 and 680
  const answer = text(houseAnswer(sample.houseResult));
  for (const part of ["515 W/K", "680 W/K", "glazing", "[no]"]) {
    assert(answer.includes(part), `${part} in ${answer}`);
  }
});

Deno.test("fanAnswer() says no for a stalled fan", () => {
  // Property: light
  const stalled = { ...sample.fanResult, stalled: true };
  assert(text(fanAnswer(stalled, sample.fanInputs)).startsWith("[no]"));
  assert(text(fanAnswer(sample.fanResult, sample.fanInputs)).startsWith("[yes]"));
});

Deno.test("headersAnswer() counts the tubes outside ten per cent", () => {
  // Property: shares of the sample run from 0.88 to 1.12 in two layers of ten
  const inputs = { layout: "Z" } as Parameters<typeof headersAnswer>[1];
  const result = { ...sample.headersResult, heatFactor: 0.99 };
  const answer = text(headersAnswer(result, inputs, sample.tubesResult));
  assert(answer.includes("4 of 20 are outside ±10 %"), answer);
  assert(answer.includes("tube 1 gets least"), answer);
  assert(answer.startsWith("[no]"));
});

Deno.test("figureTexts() shows shares in per cent, null as a dash and small numbers as powers", () => {
  // Property: form
  const figure = (value: number | string | null, unit: string) => ({ value, unit, label: "" });
  assertEquals(figureTexts("store.recovery", figure(0.561, "1"))[0], "56\u00a0%");
  assertEquals(figureTexts("x.y", figure(null, "date")), ["–", ""]);
  assertEquals(figureTexts("store.balanceResidual", figure(-4.5e-14, "1"))[0], "−4.5e−14");
  assertEquals(figureTexts("tubes.diameter", figure(0.102, "m")), ["102\u00a0mm", "4.0\u00a0in"]);
});

Deno.test("inputRows() shows every section's inputs once, with unit and origin", async () => {
  // Property: nothing unreadable, defaults marked as such
  const study = await openStudy(defaultStudyPath(), {});
  for (const { name: section, section: { fields } } of CHAPTERS) {
    if (section === "climate") continue;
    const rows = inputRows(study, section);
    assert(rows.length >= Math.min(5, Object.keys(fields).length), section);
    assertEquals(new Set(rows.map((row) => row.key)).size, rows.length);
    for (const row of rows) {
      assert(!/undefined|NaN|\[object/.test(`${row.si} ${row.us}`), row.key);
      assert(row.from === "given" || row.from.startsWith("default: "), row.key);
    }
  }
});
