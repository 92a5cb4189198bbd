// Property: decays of a made log are found in quiet dark hours alone, and give the law they were made by.
import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import {
  HOUSE_SERIES,
  type HouseSeries,
  type LoggedHouse,
} from "../../../lib/measured/calibrated/logged_house.ts";
import { tracerNights } from "../../../lib/measured/calibrated/tracer_nights.ts";
import { leakageLaw } from "../../../lib/measured/mod.ts";
import { normalStream } from "../../../lib/measured/demo/dice.ts";

const [CALM, WIND] = [0.6, 0.1];
const STEP = 900;
const DAYS = 24;
const HOURS = 24 * DAYS;
const DOSED = [2, 5, 8, 11, 14, 17, 20, 22];

function made(seed: number, changes: Partial<LoggedHouse> = {}): LoggedHouse {
  const noise = normalStream(seed, "tracer");
  // one wind and one frost from noon to noon
  const night = (hour: number) => Math.floor((hour + 12) / 24);
  const speed = (hour: number) => 1 + 6 * Math.abs(Math.sin(night(hour)));
  const outside = (hour: number) => -4 - night(hour) % 7;
  const hourly = (at: (hour: number) => number) =>
    Float64Array.from({ length: HOURS }, (_, hour) => at(hour));
  const values = new Float64Array(4 * HOURS);
  let excess = 0;
  for (let k = 0; k < values.length; k++) {
    const hour = Math.floor(k / 4);
    if (hour % 24 === 20 && k % 4 === 0 && DOSED.includes(Math.floor(hour / 24))) excess = 2600;
    const rate = CALM * Math.sqrt((8 - outside(hour)) / 20) + WIND * speed(hour);
    const left = excess * Math.exp(-rate * STEP / 3600);
    values[k] = 420 + (excess > 0 ? (excess - left) / Math.log(excess / left) : 0) + 5 * noise();
    excess = left < 1 ? 0 : left;
  }
  const series = Object.fromEntries(
    Object.keys(HOUSE_SERIES).map((name) => [name, null]),
  ) as unknown as Record<HouseSeries, Float64Array | null>;
  return {
    start: 0,
    hours: HOURS,
    hourOfYear: Int32Array.from({ length: HOURS }, (_, hour) => hour),
    held: new Uint8Array(HOURS),
    heldWords: null,
    series: {
      ...series,
      inside: hourly(() => 8),
      outside: hourly(outside),
      wind: hourly(speed),
      sun: hourly((hour) => hour % 24 > 7 && hour % 24 < 18 ? 300 : 0),
    },
    uncertainty: Object.fromEntries(
      Object.keys(HOUSE_SERIES).map((name) => [name, 0.1]),
    ) as Record<HouseSeries, number>,
    ground: [],
    heat: null,
    covariance: [],
    air: null,
    tracer: { values, accuracy: 20 },
    step: STEP,
    ...changes,
  };
}

Deno.test("tracerNights(): every dose is found, with the air change of its night", () => {
  const nights = tracerNights(made(1));
  assertEquals(nights.length, DOSED.length);
  for (const { rate, difference, wind } of nights) {
    assertAlmostEquals(rate, CALM * Math.sqrt(difference / 20) + WIND * wind, 0.05 * rate);
  }
});

Deno.test("tracerNights(): hours held out, opened vents and daylight give no decay", () => {
  const house = made(2);
  const held = Uint8Array.from({ length: HOURS }, (_, hour) => hour < HOURS / 2 ? 1 : 0);
  assertEquals(
    tracerNights({ ...house, held }).length,
    DOSED.filter((day) => day >= DAYS / 2).length,
  );
  const vents = new Float64Array(HOURS).fill(0.2);
  assertEquals(tracerNights({ ...house, series: { ...house.series, vents } }), []);
  const sun = new Float64Array(HOURS).fill(100);
  assertEquals(tracerNights({ ...house, series: { ...house.series, sun } }), []);
  assertEquals(tracerNights({ ...house, tracer: null }), []);
});

Deno.test("tracerNights(), leakageLaw(): the truth lies in the interval in 90 to 100 of 100 seeds", () => {
  let [calm, wind] = [0, 0];
  for (let seed = 1; seed <= 100; seed++) {
    const [one, other] = leakageLaw(tracerNights(made(seed))).estimates;
    if (one!.low <= CALM && CALM <= one!.high) calm++;
    if (other!.low <= WIND && WIND <= other!.high) wind++;
  }
  assert(calm >= 90 && wind >= 90, `${calm} and ${wind}`);
});
