import { assert, assertEquals } from "@std/assert";
import { climateQuality, degreeHoursBelow, summariseClimate } from "winterground/climate/mod.ts";
import {
  cropLimitTable,
  designTable,
  qualityTable,
  shortDayTable,
} from "../../lib/show/climate/tables.ts";
import { estimatesTable, groundWaterTable, layerTable } from "../../lib/show/soil/tables.ts";
import { findSoil, type SoilInputs } from "winterground/soil/mod.ts";
import { sampleYear, withSeries } from "../climate/sample.ts";
import * as sample from "./sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");
const lineOf = (found: string, start: string) =>
  found.split("\n").find((line) => line.startsWith(start)) ?? "";

const year = sampleYear();
const LOAM: SoilInputs = {
  ...findSoil("loam"),
  measuredConductivity: null,
  waterTableDepth: 2.5,
  snowDepth: 0.2,
};

Deno.test("qualityTable() names the months whose radiation stands in the wrong hour", () => {
  // Property: a sound year is in time in every month, one moved by an hour is not
  const sound = text(qualityTable(climateQuality(year)));
  assertEquals(sound.match(/in time/g)?.length, 12);
  const names = ["globalHorizontal", "directNormal", "diffuseHorizontal"] as const;
  const late = withSeries(
    year,
    names,
    (_, hour, series) => series[(hour + 8759) % 8760]!,
  );
  assert(text(qualityTable(climateQuality(late))).includes("an hour late"));
});

Deno.test("designTable() and cropLimitTable() show the figures of the chapter", () => {
  // Property: same numbers as the functions behind them; limits rise, none twice
  const result = summariseClimate(year);
  const design = text(designTable(result));
  assert(lineOf(design, "coldest hour").includes(result.coldestHour.toFixed(1).replace("-", "−")));
  assert(
    lineOf(design, "degree-days below 18.3").includes(result.heatingDegreeDays18_3.toFixed(0)),
  );
  const house = { crop: "lettuce", heatSetPoint: 5 } as Parameters<typeof cropLimitTable>[1];
  const limits = text(cropLimitTable(year, house));
  const expected = degreeHoursBelow(year.dryBulb, 5).toFixed(0);
  const row = lineOf(limits, "heating set point");
  assert(row.replaceAll(" ", "").includes(expected), `${expected} in ${row}`);
  assertEquals(limits.match(/ 5\.0 /g)?.length, 1);
});

Deno.test("shortDayTable() has no short day at the equator and more of them northward", () => {
  // Property: order
  const tenHours = (latitude: number) =>
    Number(/10 h\s+(\d+)/.exec(text(shortDayTable({ latitude })))?.[1]);
  assertEquals(tenHours(5), 0);
  assert(tenHours(40) > 0 && tenHours(55) > tenHours(40));
});

Deno.test("layerTable() and groundWaterTable() read downwards", () => {
  // Property: layers end where the next begins; nearer water is told more sharply
  const layers = [{ ...findSoil("peat"), thickness: 0.4, measuredConductivity: null }];
  const found = text(layerTable({ ...LOAM, layers }));
  assert(/peat\s+0\.00\s+0\.00\s+0\.40/.test(found), found);
  assert(/loam\s+0\.40\s+1\.31\s+bottom/.test(found), found);
  const words = (waterTableDepth: number | null) =>
    text(groundWaterTable({ ...LOAM, waterTableDepth }, 0.9));
  assert(words(0.8).includes("fill with water"));
  assert(words(1.5).includes("too close"));
  assert(words(2.5).includes("clear of the tubes"));
  assert(words(null).includes("not known"));
});

Deno.test("estimatesTable() leaves out a frost depth that has no end", () => {
  // Property: null is a dash
  const difference = { ...sample.soilResult.difference, waveFrostDepth: null };
  const found = text(estimatesTable({ ...sample.soilResult, difference }));
  assert(/frost depth from the wave\s+–/.test(found), found);
  assert(lineOf(found, "column minus wave").includes("1.0 K"));
});
