import { assert, assertEquals } from "@std/assert";
import { figuresTable, figureTexts } from "../../../lib/show/study/figures_table.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("figuresTable() shows the range of figures that have one, and no column where none has", () => {
  // Property: low and high in the unit of the figure
  const mean = { value: 6.5, unit: "degC", label: "mean" };
  const ranged = text(figuresTable({
    "soil.meanTemperature": { ...mean, low: 4.25, high: 8.75 },
    "soil.frostDepth": { value: 0.8, unit: "m", label: "frost" },
  }));
  assert(ranged.includes("95 % range") && ranged.includes("4.3 degC to 8.8 degC"), ranged);
  assertEquals(text(figuresTable({ "soil.meanTemperature": mean })).includes("95 %"), false);
});

Deno.test("figuresTable() leaves provisional figures to the chapter's own tables", () => {
  // Property: one key, one value in all notebooks, also where a notebook computes its own chapter alone
  const hours = { value: 1522, unit: "h", label: "below 0 degC, screening year" };
  const shown = text(figuresTable({
    "house.hoursBelowFreezingNoStore": { ...hours, provisional: true },
    "house.floorArea": { value: 192, unit: "m2", label: "floor area" },
  }, "house"));
  assert(!shown.includes("1522") && shown.includes("floor area"), shown);
});

Deno.test("figureTexts() shows shares in per cent, null as a dash and small numbers as powers", () => {
  // Property: form
  const figure = (value: number | string | null, unit: string) => ({ value, unit, label: "" });
  assertEquals(figureTexts("store.recovery", figure(0.561, "1"))[0], "56\u00a0%");
  assertEquals(figureTexts("x.y", figure(null, "date")), ["–", ""]);
  assertEquals(figureTexts("store.balanceResidual", figure(-4.5e-14, "1"))[0], "−4.5e−14");
  assertEquals(figureTexts("tubes.diameter", figure(0.102, "m")), ["102\u00a0mm", "4.0\u00a0in"]);
});
