import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { marchAir } from "../../../lib/store/air/air_march.ts";
import { marchOutput } from "../../../lib/store/air/march_buffers.ts";
import { tubeCouplings } from "../../../lib/store/air/coupling.ts";
import { quarterOf } from "../../../lib/store/ledger/ledger.ts";
import { type ReducedEngine, reducedEngine } from "../../../lib/store/solver/reduced/engine.ts";
import { reducedState } from "../../../lib/store/solver/reduced/fields.ts";
import { reduceSlice } from "../../../lib/store/solver/reduced/reduction.ts";
import { storeSite } from "../../../lib/store/site.ts";
import { tagFields } from "../../../lib/store/ledger/tags.ts";
import type { FanMode } from "../../../lib/store/control.ts";
import type { HouseStep } from "../../../lib/house/types.ts";
import { YEAR_STEPS } from "../../../lib/store/step_report.ts";
import { standInRequest } from "../stand_in.ts";

const request = standInRequest({ store: { slices: 3 }, tubes: { count: 6 } });
const site = storeSite(request, 8, 72);
const slice = reduceSlice(site.operator);
const lanes = site.lengths.length;

/** Marches dry air through one engine's blocks; returns heat by slice and tube and its sum, W. */
function march(engine: ReducedEngine, temperature: number, reversed: boolean) {
  const { field } = site;
  const output = marchOutput(field);
  const [coupling] = tubeCouplings(engine, field, site.tubeLengthFactor);
  marchAir({
    field,
    saturation: site.saturation,
    block: engine.blockTemperature,
    coupling: coupling!,
    temperature,
    ratio: 0,
    reversed,
    water: new Float64Array(field.slices * field.tubes),
    seconds: YEAR_STEPS[0]!,
  }, output);
  return { heat: output.heat, latentSlope: output.latentSlope, into: -field.copies * output.toAir };
}

Deno.test("tagFields() and the undisturbed ground, run by itself, sum to the whole", () => {
  // Property: superposition. The ground is run as a field of its own with floor, weather and the real
  // air entering; what the tags leave of the whole must be just that, to rounding.
  const start = site.operator.capacity.map((_, c) => 6 + 2 * Math.sin(c / 40));
  const engines = [0, 1].map(() => {
    const engine = reducedEngine(slice, lanes, YEAR_STEPS);
    engine.load(reducedState(slice, lanes, start));
    return engine;
  });
  const [whole, ground] = engines as [ReducedEngine, ReducedEngine];
  const couplings = tubeCouplings(whole, site.field, site.tubeLengthFactor);
  const { field, heatRate, airRate, modes } = site;
  const fanPower = modes.charge.power;
  const flow = {
    field,
    heatRate,
    airRate,
    fanPower,
    coupling: (step: number) => couplings[step]!,
    slope: () => 0,
  };
  const tags = tagFields(slice, site);
  tags.open();
  const outdoor = new Float64Array(lanes);
  const floor = new Float64Array(lanes);
  const laneHeat = (heat: Float64Array) => {
    const full = new Float64Array(lanes * site.field.tubes);
    heat.forEach((value, k) => full[k] = value * site.tubeLengthFactor);
    return full;
  };
  let groundGiven = 0;
  // across the turn of a quarter: the last five days of March and the first five of April
  for (let count = 0; count < 240 * 4; count++) {
    const hour = 85 * 24 + Math.floor(count / 4);
    const clock = hour % 24;
    const mode: FanMode = clock > 10 && clock < 16 ? 1 : clock < 6 ? -1 : 0;
    outdoor.fill(-3 + count / 300);
    floor.fill(10 + 6 * Math.sin(clock / 4));
    for (const engine of engines) engine.predict(0, outdoor, outdoor, mode !== 0);
    const air = mode === 1 ? 27 : 4;
    const all = mode === 0 ? null : march(whole, air, mode === -1);
    const own = mode === -1 ? march(ground, air, true) : null;
    const none = new Float64Array(site.slices * site.field.tubes);
    whole.finish(0, laneHeat(all?.heat ?? none), floor, mode !== 0);
    ground.finish(0, laneHeat(own?.heat ?? none), floor, mode === -1);
    groundGiven -= (own?.into ?? 0) * YEAR_STEPS[0]!;
    tags.listen({
      hour,
      step: 0,
      seconds: YEAR_STEPS[0]!,
      mode,
      reversed: mode === -1,
      house: {} as HouseStep,
      humidity: 0,
      intake: air,
      outlet: air,
      sensible: all?.into ?? 0,
      collected: 0,
      fanPower: 0,
      air: flow,
      latent: 0,
      vapour: 0,
      store: 0,
      floor: 0,
      heat: all?.heat ?? none,
      latentHeat: none,
      latentSlope: none,
    });
  }
  const ledger = tags.close();
  const putIn = ledger.putIn[0]! + ledger.putIn[1]!;
  const left = ledger.back.reduce((sum, row) => sum + row[4]!, 0);
  assert(putIn > 0 && ledger.back[1]![0]! > 0, "March's heat comes back in April");
  assertAlmostEquals(left, groundGiven, 1e-9 * putIn);
  const tagged = tags.engine.content();
  const [content, own] = [whole.content(), ground.content()];
  for (let lane = 0; lane < site.slices; lane++) {
    let sum = own[lane]!;
    for (let tag = 0; tag < 4; tag++) sum += tagged[tag * site.slices + lane]!;
    assertAlmostEquals(sum, content[lane]!, 1e-9 * Math.abs(content[lane]!), `slice ${lane}`);
  }
});

Deno.test("quarterOf() turns with the calendar: 1 April, 1 July, 1 October", () => {
  // Property: days of the months: 31 + 28 + 31 = 90, + 30 + 31 + 30 = 181, + 31 + 31 + 30 = 273
  const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  let hour = 0;
  days.forEach((count, month) => {
    const quarter = Math.floor(month / 3);
    assertEquals(quarterOf(hour), quarter, `first hour of month ${month + 1}`);
    hour += 24 * count;
    assertEquals(quarterOf(hour - 1), quarter, `last hour of month ${month + 1}`);
  });
  assertEquals(hour, 8760);
});
