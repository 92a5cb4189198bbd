import { assert, assertEquals } from "@std/assert";
import { hoursBelow } from "../../lib/basics/mod.ts";
import { CHAPTERS, defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { tubes as tubesPart } from "../../lib/tubes/chapter.ts";
import { answer as fanAnswer, pointAgainst } from "../../lib/show/fan/answer.ts";
import { answer as headersAnswer } from "../../lib/show/headers/answer.ts";
import { answer as houseAnswer, freezingRange, frostLight } from "../../lib/show/house/answer.ts";
import { goodDay } from "../../lib/show/tubes/answer.ts";
import { figureTexts } from "../../lib/show/study/figures_table.ts";
import { carelessEnds, headerVariants } from "../../lib/show/headers/header_variants.ts";
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

Deno.test("freezingRange() brackets the hours below freezing", () => {
  // Property: one kelvin warmer means fewer hours, one colder more
  const series = sample.houseResult.freeRunning.airTemperature;
  const [low, high] = [...freezingRange(series).replaceAll("\u00a0", " ").matchAll(/(\d+) h/g)]
    .map((found) => Number(found[1]));
  const own = hoursBelow(series, 0);
  assert(low! <= own && own <= high!, `${low} ${own} ${high}`);
  assert(low! < high!);
});

Deno.test("houseAnswer() takes the leakage at half and at twice its value", () => {
  // Property: 570 W/K with 110 W/K of leakage gives 515 and 680
  const answer = text(houseAnswer(sample.houseResult));
  for (const part of ["515 W/K", "680 W/K", "glazing", "[no]"]) {
    assert(answer.includes(part), `${part} in ${answer}`);
  }
});

Deno.test("pointAgainst() gives less air against more resistance, on the fan's curve", () => {
  // Property: monotone
  const flows = [0.8, 1, 1.2].map((factor) => pointAgainst(sample.fanResult, factor)!.airFlow);
  assert(flows[0]! > flows[1]! && flows[1]! > flows[2]!);
  assert((pointAgainst(sample.fanResult, 1e9)?.airFlow ?? 0) < 0.01);
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

Deno.test("goodDay() ranks the days chosen, counting only heat put in", () => {
  // Property: 6 + 2 kW at noon peak; a better rank never gives less
  const first = goodDay(sample.storeResult, 1);
  assert(goodDay(sample.storeResult, 10) <= first);
  assert(first > 0);
  const onlyOneDay = goodDay(sample.storeResult, 1, (day) => day === 100);
  assert(onlyOneDay <= first);
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

Deno.test("headerVariants() get more even with the size, in every layout", async () => {
  // Property: wider header, more even tubes; from 15 inches on all within the study's tubes
  const study = await openStudy(defaultStudyPath(), {});
  const house = { geometry: { parts: [], floorArea: 192, volume: 600, perimeter: 64 } };
  const tubes = tubesPart.compute(tubesPart.takes(study, { house }));
  const variants = headerVariants(study, tubes);
  for (const layout of ["Z", "U", "centre"]) {
    const rows = variants.filter((row) => row.layout === layout);
    assert(rows.length >= 5);
    for (let i = 1; i < rows.length; i++) {
      assert(rows[i]!.unevenness < rows[i - 1]!.unevenness, `${layout} ${rows[i]!.diameter}`);
    }
  }
});

Deno.test("carelessEnds() draws the same fields every time and makes them less even", async () => {
  // Property: seeded; the poorest tube gets less than with flush ends
  const study = await openStudy(defaultStudyPath(), {});
  const house = { geometry: { parts: [], floorArea: 192, volume: 600, perimeter: 64 } };
  const tubes = tubesPart.compute(tubesPart.takes(study, { house }));
  const first = carelessEnds(study, tubes);
  assertEquals(carelessEnds(study, tubes), first);
  assert(first.flowMin.low <= first.flowMin.high && first.flowMin.mean < 1);
  assert(first.flowMax.mean > 1);
});
