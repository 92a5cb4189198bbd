import { assert, assertEquals } from "@std/assert";
import { figuresTable } from "../../lib/show/study/figures_table.ts";

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
