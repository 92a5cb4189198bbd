import { assert, assertEquals } from "@std/assert";
import { climateQuality, daylight, summariseClimate } from "winterground/climate/mod.ts";
import { CROPS, limitsOutdoors } from "winterground/house/mod.ts";
import {
  cropLimitTable,
  designTable,
  qualityTable,
  shortDayTable,
} from "../../lib/show/climate/tables.ts";
import { estimatesTable, groundWaterTable, layerTable } from "../../lib/show/soil/tables.ts";
import { findSoil, type SoilInputs, summariseSoil } from "winterground/soil/mod.ts";
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
  const rows = limitsOutdoors(year.dryBulb, CROPS[0]!, 5);
  const limits = text(cropLimitTable(rows));
  const expected = rows.find(({ limit }) => limit === 5)!.degreeHours.toFixed(0);
  const row = limits.split("\n").find((line) => / 5\.0 /.test(line))!;
  assert(row.replaceAll(" ", "").includes(expected), `${expected} in ${row}`);
  assertEquals(limits.match(/ 5\.0 /g)?.length, 1);
});

Deno.test("shortDayTable() shows a dash where no day is short", () => {
  // Property: null is a dash, a count is the chapter's
  const { shortDays } = daylight({ ...year.place, latitude: 5 });
  assert(/10 h\s+0\s+–\s+–/.test(text(shortDayTable(shortDays))));
});

Deno.test("layerTable() and groundWaterTable() read downwards", () => {
  // Property: layers end where the next begins; nearer water is told more sharply
  const layers = [{ ...findSoil("peat"), thickness: 0.4, measuredConductivity: null }];
  const found = text(layerTable(summariseSoil({ ...LOAM, layers }, sample.soilResult)));
  assert(/peat\s+0\.00\s+0\.00\s+0\.40/.test(found), found);
  assert(/loam\s+0\.40\s+1\.31\s+bottom/.test(found), found);
  const words = (waterTableDepth: number | null) => {
    const inputs = { ...LOAM, waterTableDepth };
    return text(groundWaterTable(inputs, summariseSoil(inputs, sample.soilResult)));
  };
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
