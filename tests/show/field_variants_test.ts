import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { houseGeometry } from "../../lib/house/skin/geometry.ts";
import {
  balanceStudy,
  blockedTubes,
  layoutVariants,
  wantedHeaders,
  workmanshipStudies,
} from "../../lib/show/headers/header_variants.ts";
import {
  fanChoices,
  fanCounts,
  fanElevations,
  fanSpeeds,
} from "../../lib/show/fan/fan_variants.ts";
import { fanHoursPerDay, fieldSearch } from "../../lib/show/tubes/field_search.ts";
import { fouledTubes } from "../../lib/show/tubes/tube_water.ts";
import { materialRows } from "../../lib/show/tubes/choice_tables.ts";
import { tubeAlong } from "../../lib/show/tubes/tube_along.ts";
import type { HouseResult } from "../../lib/house/mod.ts";
import { fan as fanPart } from "../../lib/fan/chapter.ts";
import { headers as headersPart } from "../../lib/headers/chapter.ts";
import { tubes as tubesPart } from "../../lib/tubes/chapter.ts";
import { defaultStudyPath, openStudy } from "../../lib/study/mod.ts";
import { airProperties, moistEnthalpy } from "../../lib/air/mod.ts";
import { soilResult, storeResult } from "./sample.ts";

const study = await openStudy(defaultStudyPath());
const house = { geometry: houseGeometry(study.house) } as HouseResult;
const tubes = tubesPart.compute(tubesPart.takes(study, { house }));
const headers = headersPart.compute(headersPart.takes(study, { tubes }));
const fan = fanPart.compute(fanPart.takes(study, { headers }));
const store = {
  ...storeResult,
  year: {
    ...storeResult.year,
    intakeTemperature: storeResult.year.fanPower.map(() => 28),
    storeTemperature: storeResult.year.fanPower.map(() => 14),
    fanShare: storeResult.year.fanPower.map((_, hour) => hour < 240 && hour % 24 < 6 ? 0.5 : 0),
  },
};

Deno.test("materialRows() gives the study's tube its own numbers and never helps it by its ribs", () => {
  // Property: agrees with the chapter; the wrong film is larger than the right one
  const rows = materialRows(study, tubes);
  const own = rows.find((row) => row.product.id === study.tubes.tube)!;
  assertAlmostEquals(own.pressureDrop, tubes.pressureDrop, 1e-6 * tubes.pressureDrop);
  assertAlmostEquals(own.effectiveness, tubes.effectiveness, 1e-9);
  for (const row of rows) {
    assert(row.friction >= row.smoothFriction - 1e-12);
    if (row.wrongFilm !== null) assert(row.wrongFilm > row.film);
  }
});

Deno.test("tubeAlong() closes the energy of the air and adds nothing latent to dry air", () => {
  // Property: enthalpy lost = sensible + latent + the water's own, for the moist tube; dry: sensible
  const { rows, moist, dry, intake, wall } = tubeAlong(study, tubes, store);
  const piece = tubes.length / rows.length;
  const sums = rows.reduce(
    (sum, row) => ({
      sensible: sum.sensible + row.sensible * piece,
      latent: sum.latent + row.latent * piece,
    }),
    { sensible: 0, latent: 0 },
  );
  assertAlmostEquals(sums.sensible, moist.sensible, 1e-6 * Math.abs(moist.sensible));
  assertAlmostEquals(sums.latent, moist.latent, 1e-6 * Math.abs(moist.latent) + 1e-9);
  assertEquals(dry.latent, 0);
  assert(moist.outlet.temperature > wall && moist.outlet.temperature < intake.temperature);
  const lost = moistEnthalpy(28, 0) - moistEnthalpy(dry.outlet.temperature, 0);
  assertAlmostEquals(lost / (28 - dry.outlet.temperature), 1006, 1e-6);
});

Deno.test("fouledTubes() takes more air with more silt and shuts the tube with the deepest sag", () => {
  // Property: monotone; limits
  const rows = fouledTubes(study, tubes);
  const silt = rows.filter((row) => row.litres === null).map((row) => row.flow);
  const sags = rows.filter((row) => row.litres !== null).map((row) => row.flow);
  for (const list of [silt, sags]) {
    for (let i = 1; i < list.length; i++) assert(list[i]! <= list[i - 1]!);
    assert(list[0]! < 1 + 1e-12);
  }
  assertEquals(sags.at(-1), 0);
  for (const row of rows) assert(row.heat <= 1 && row.heat >= 0);
});

Deno.test("fieldSearch() finds fields that the study's own never beats, and prices its own alike", () => {
  // Property: the front is a front; metres, ends and digging add up to more than the tube alone
  const search = fieldSearch(study, { soil: soilResult, house, tubes, fan, store });
  assert(search.front.length > 3 && search.own !== null);
  const { own, front } = search;
  assertEquals([own.count, own.length], [study.tubes.count, study.tubes.length]);
  for (const field of front) {
    const beaten = front.some((other) =>
      other !== field && other.heat >= field.heat && other.fanEnergy <= field.fanEnergy &&
      other.cost <= field.cost &&
      (other.heat > field.heat || other.fanEnergy < field.fanEnergy || other.cost < field.cost)
    );
    assert(!beaten);
  }
});

Deno.test("fanHoursPerDay() counts the days on which the fan runs", () => {
  // Property: ten days of six half hours
  assertAlmostEquals(fanHoursPerDay(store), 3, 1e-9);
});

Deno.test("layoutVariants() holds the study's own layout and ranks Z behind the middle", () => {
  // Property: agrees with the chapter; both headers' pressure changes add up in a Z
  const variants = layoutVariants(study, tubes);
  const of = (layout: string) => variants.find((one) => one.layout === layout)!.result;
  assertAlmostEquals(of(study.headers.layout).flowMin, headers.flowMin, 1e-9);
  assert(of("Z").unevenness > of("centre").unevenness);
});

Deno.test("wantedHeaders() asks for wider headers for more evenness", () => {
  // Property: monotone, and the evenness wanted is reached
  const rows = wantedHeaders(study, tubes);
  for (const layout of new Set(rows.map((row) => row.layout))) {
    const [loose, tight] = rows.filter((row) => row.layout === layout);
    assert(loose!.unevenness > tight!.unevenness);
    assert(loose!.sized!.diameter <= tight!.sized!.diameter + 1e-9);
    for (const row of [loose!, tight!]) assert(row.sized!.unevenness <= row.unevenness + 1e-9);
  }
});

Deno.test("workmanshipStudies() cost most where least care was taken", () => {
  // Property: order of heat at held pressure; flanged ends are the measure of all
  const heat = workmanshipStudies(study, tubes).map(({ result }) =>
    result.heatAtEqualPressure.mean
  );
  assertAlmostEquals(heat[0]!, 1, 1e-9);
  assert(heat[1]! < heat[0]! && heat[2]! < heat[1]!);
});

Deno.test("blockedTubes() gives the air of flooded tubes to the others at more pressure", () => {
  // Property: conservation: the open tubes carry count over open of the mean, on average
  const [clean, first, , many] = blockedTubes(study, tubes);
  assertEquals(clean!.heat, 1);
  const count = tubes.count / study.headers.groups;
  const mean = count / (count - 1);
  assert(first!.flowMin < mean && first!.flowMax > mean);
  assert(many!.pressureDrop > first!.pressureDrop && first!.pressureDrop > clean!.pressureDrop);
  assert(many!.heat < first!.heat);
});

Deno.test("balanceStudy() gives the poorest tube no plate and costs pressure", () => {
  // Property: definition of balancing orifices
  const { shares, holes, pressureBefore, pressureAfter, diameter } = balanceStudy(study, tubes);
  const poorest = shares.indexOf(Math.min(...shares));
  assertAlmostEquals(holes[poorest]!, diameter, 1e-3 * diameter);
  assert(pressureAfter > pressureBefore);
});

Deno.test("fanCounts(), fanSpeeds() and fanChoices() agree with the chapter and explain failures", () => {
  // Property: the study's own row is the chapter's result; more fans, less than as much more air
  const sources = { tubes, headers };
  const counts = fanCounts(study, sources);
  const flows = counts.map(({ result }) => result?.airFlow ?? NaN);
  assertAlmostEquals(flows[study.fan.count - 1]!, fan.airFlow, 1e-9);
  assert(flows[1]! > flows[0]! && flows[1]! < 2 * flows[0]!);
  const speeds = fanSpeeds(study, sources).flatMap(({ result }) => result === null ? [] : [result]);
  for (let i = 1; i < speeds.length; i++) assert(speeds[i]!.power > speeds[i - 1]!.power);
  const hard = { ...study, fan: { ...study.fan, filterPressure: 5000 } };
  for (const { result, reason } of fanChoices(hard, sources)) {
    if (result === null) assert(reason.length > 30);
  }
  const weak = { ...study, fan: { ...study.fan, riserDiameter: 0.05 } };
  for (const { result } of fanChoices(weak, sources)) {
    assert(result === null || result.flowRatio < 0.7);
  }
});

Deno.test("fanElevations() carry less heat in thin air, in proportion to the density", () => {
  // Property: flow nearly unchanged, heat for each kelvin with density
  const trials = fanElevations(study, house);
  const low = trials[0]!;
  const high = trials.at(-1)!;
  assert(Math.abs(high.result!.airFlow / low.result!.airFlow - 1) < 0.05);
  const ratio = high.capacityRate! / low.capacityRate!;
  const density = high.result!.density / low.result!.density;
  assertAlmostEquals(
    ratio,
    density * high.result!.airFlow / low.result!.airFlow,
    1e-9,
  );
  assert(density < 0.75 && airProperties(25, 101325).density > 1.17);
});
