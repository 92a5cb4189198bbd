import { alongChart } from "../../lib/show/tubes/mod.ts";
import { tubeAlongTables } from "../../lib/store/extra_tables.ts";
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { fan as fanPart } from "../../lib/fan/chapter.ts";
import { headers as headersPart } from "../../lib/headers/chapter.ts";
import { tubes as tubesPart } from "../../lib/tubes/chapter.ts";
import { designAir } from "../../lib/tubes/mod.ts";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { airProperties, moistEnthalpy } from "../../lib/air/mod.ts";
import {
  fieldSearch,
  goodDay,
  strongestHour,
  tubeAtStrongestHour,
  tubeCounts,
  winterDays,
} from "../../lib/store/mod.ts";
import { hourly, storeResult } from "../show/sample.ts";

const study = await openStudy(defaultStudyPath());
const tubes = tubesPart.compute(tubesPart.takes(study, {}));
const headers = headersPart.compute(headersPart.takes(study, { tubes }));
const fan = fanPart.compute(fanPart.takes(study, { headers }));
const air = designAir(study);
const year = {
  ...storeResult.year,
  intakeTemperature: hourly(() => 28),
  storeTemperature: hourly(() => 14),
  fanShare: hourly((hour) => hour < 240 && hour % 24 < 6 ? 0.5 : 0),
};

Deno.test("tubeAtStrongestHour() closes the energy of the air and adds nothing latent to dry air", () => {
  // Property: enthalpy lost = sensible + latent + the water's own, for the moist tube; dry: sensible
  const found = tubeAtStrongestHour({ tubes, year, pressure: air.pressure });
  const { rows, moist, dry, intake, wall } = found!;
  const piece = tubes.length / rows.length;
  const sensible = rows.reduce((sum, row) => sum + row.sensible * piece, 0);
  const latent = rows.reduce((sum, row) => sum + row.latent * piece, 0);
  assertAlmostEquals(sensible, moist.sensible, 1e-6 * Math.abs(moist.sensible));
  assertAlmostEquals(latent, moist.latent, 1e-6 * Math.abs(moist.latent) + 1e-9);
  assertEquals(dry.latent, 0);
  assert(moist.outlet.temperature > wall && moist.outlet.temperature < intake.temperature);
  const lost = moistEnthalpy(28, 0) - moistEnthalpy(dry.outlet.temperature, 0);
  const heatCapacity = airProperties(25, 101325).heatCapacity;
  assertAlmostEquals(lost / (28 - dry.outlet.temperature), heatCapacity, 0.002 * heatCapacity);
});

Deno.test("a year in which nothing is charged has no strongest hour, no rows and no picture", () => {
  // Property: a resting fan draws no air, so there is none to follow
  const nothing = hourly(() => 0);
  const resting = {
    ...year,
    sensible: nothing,
    latent: nothing,
    intakeTemperature: hourly(() => NaN),
  };
  const found = tubeAtStrongestHour({ tubes, year: resting, pressure: air.pressure });
  assertEquals(found, null);
  assertEquals(tubeAlongTables(found)[0]!.rows, []);
  assert(alongChart(found)["text/plain"]!.includes("No hour charges"));
});

Deno.test("strongestHour() takes sensible and latent heat together", () => {
  // Property: less sensible heat may bring more in all
  const sensible = hourly((hour) => hour === 50 ? 900 : hour === 60 ? 800 : 0);
  const latent = hourly((hour) => hour === 60 ? 300 : 0);
  assertEquals(strongestHour({ sensible, latent }), 60);
});

Deno.test("goodDay() ranks the days chosen, counting only heat put in", () => {
  // Property: days of 1, 2, 3 … kWh; hours that give back are not taken off
  const heat = hourly((hour) => hour % 24 === 12 ? 1000 * (1 + Math.floor(hour / 24)) : -500);
  const made = { sensible: heat, latent: hourly(() => 0) };
  assertEquals([1, 2, 10].map((rank) => goodDay(made, rank)), [365, 364, 356]);
  assertEquals(goodDay(made, 1, (day) => day < 100), 100);
  assertEquals(goodDay(made, 5, winterDays(50)), 361);
  assertEquals(goodDay(made, 1, winterDays(-40)), 243);
});

Deno.test("tubeCounts() goes up with the share of the night and down with a metre's heat", () => {
  // Property: order; air-led counts by hand
  const question = {
    house: { peakHeatLoss: 20000, volume: 600 },
    inputs: { count: 20 },
    tubes: { totalLength: 440, diameter: 0.1, length: 22 },
    year,
    latitude: 50,
  };
  const { rows, designNight, goodDay: any, goodWinterDay } = tubeCounts(question);
  assertEquals(designNight, 280);
  assert(goodWinterDay <= any);
  const area = Math.PI * 0.1 ** 2 / 4;
  assertEquals(rows[0]!.count, Math.round(600 * 5 / 3600 / (3 * area)));
  assert(rows[4]!.count! >= rows[2]!.count! && rows[3]!.count! >= rows[2]!.count!);
  assertEquals(rows.at(-1), { way: "this study", count: 20, totalLength: 440 });
  const hopeless = { sensible: hourly(() => 0), latent: hourly(() => 0) };
  assertEquals(tubeCounts({ ...question, year: hopeless }).rows[2]!.count, null);
});

Deno.test("fieldSearch() finds fields that no other one beats, and prices its own alike", () => {
  // Property: the front is a front; the study's own field is the last of the picks
  const search = fieldSearch({
    inputs: study.tubes,
    house: study.house,
    headers: study.headers,
    footingDepth: study.house.footingDepth,
    air,
    soil: { conductivity: 1.3, heatCapacity: 2.3e6 },
    tubes,
    fan,
    fanShare: year.fanShare,
  });
  const { own, front, picks, costClasses } = search;
  assert(front.length > 3 && own !== null && costClasses !== null);
  assertEquals([own.count, own.length], [study.tubes.count, study.tubes.length]);
  assertEquals(picks.at(-1), { why: "this study", field: own });
  assertEquals(picks[0]!.field.cost, Math.min(...front.map((field) => field.cost)));
  assertEquals(picks[1]!.field.heat, Math.max(...front.map((field) => field.heat)));
  for (const field of front) {
    const beaten = front.some((other) =>
      other !== field && other.heat >= field.heat && other.fanEnergy <= field.fanEnergy &&
      other.cost <= field.cost &&
      (other.heat > field.heat || other.fanEnergy < field.fanEnergy || other.cost < field.cost)
    );
    assert(!beaten);
  }
});
