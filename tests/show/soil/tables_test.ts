import { assert } from "@std/assert";
import { estimatesTable, groundWaterTable, layerTable } from "../../../lib/show/soil/tables.ts";
import { findSoil, type SoilInputs, summariseSoil } from "../../../lib/soil/mod.ts";
import { soilResult } from "./sample.ts";
import { DEFAULTS } from "../../harness/defaults.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");
const lineOf = (found: string, start: string) =>
  found.split("\n").find((line) => line.startsWith(start)) ?? "";
const LOAM: SoilInputs = {
  ...DEFAULTS.soil,
  ...findSoil("loam"),
  measuredConductivity: null,
  waterTableDepth: 2.5,
  snowDepth: 0.2,
};

Deno.test("layerTable() and groundWaterTable() read downwards", () => {
  // Property: layers end where the next begins; nearer water is told more sharply
  const layers = [{ ...findSoil("peat"), thickness: 0.4, measuredConductivity: null }];
  const found = text(layerTable(summariseSoil({ ...LOAM, layers }, soilResult)));
  assert(/peat\s+0\.00\s+0\.00\s+0\.40/.test(found), found);
  assert(/loam\s+0\.40\s+1\.31\s+bottom/.test(found), found);
  const words = (waterTableDepth: number | null) => {
    const inputs = { ...LOAM, waterTableDepth };
    return text(groundWaterTable(inputs, summariseSoil(inputs, soilResult)));
  };
  assert(words(0.8).includes("fill with water"));
  assert(words(1.5).includes("too close"));
  assert(words(2.5).includes("clear of the tubes"));
  assert(words(null).includes("not known"));
});

Deno.test("estimatesTable() leaves out a frost depth that has no end", () => {
  // Property: null is a dash
  const difference = { ...soilResult.difference, waveFrostDepth: null };
  const found = text(estimatesTable({ ...soilResult, difference }));
  assert(/frost depth from the wave\s+–/.test(found), found);
  assert(lineOf(found, "column minus wave").includes("1.0 K"));
});
