import { assert, assertEquals } from "@std/assert";
import { climateQuality, daylight, summariseClimate } from "../../../lib/climate/mod.ts";
import { CROPS, limitsOutdoors } from "../../../lib/house/mod.ts";
import {
  cropLimitTable,
  designTable,
  qualityTable,
  shortDayTable,
} from "../../../lib/show/climate/tables.ts";
import { sampleYear, withSeries } from "../../climate/sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");
const lineOf = (found: string, start: string) =>
  found.split("\n").find((line) => line.startsWith(start)) ?? "";
const year = sampleYear();

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
