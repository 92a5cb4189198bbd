// Source: USGS well MC11 Princeton [landon-1997], US Climate Reference Network [diamond-2013], Carslaw & Jaeger
import { assert, assertAlmostEquals, assertGreater, assertLess, assertThrows } from "@std/assert";
import Papa from "papaparse";
import { InputError } from "../../../lib/basics/mod.ts";
import { conductivityOf, soilHeatEquation, soilPair } from "../../../lib/measured/mod.ts";
import { timesOf } from "../../support/noise.ts";

const OPEN_DATA = Deno.env.get("OPEN_DATA");
const SKIPPED = OPEN_DATA === undefined ? " (skipped: OPEN_DATA is not set)" : "";
const DAY = 86400;

function columns(file: string) {
  const text = Deno.readTextFileSync(`${OPEN_DATA}/soil/${file}`);
  const { data } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  return (name: string) =>
    data.map((row) => row[name] === "" || Number(row[name]) <= -9000 ? NaN : Number(row[name]));
}

const DEPTHS = [0.5, 1, 1.5, 2, 2.5];

function princeton(from = 0) {
  const column = columns("usgs_mc11_princeton_mn_1993.csv");
  return {
    seconds: column("JULIAN").slice(from).map((day) => day * DAY),
    depths: DEPTHS,
    temperatures: DEPTHS.map((depth) => column(`TEMP.${depth.toFixed(1)}`).slice(from)),
  };
}

Deno.test({
  name: `soilHeatEquation(): USGS MC11 Princeton 1993 as an independent program fits it${SKIPPED}`,
  ignore: OPEN_DATA === undefined,
  fn() {
    // Source: record Landon et al. 1997 [landon-1997]; backward Euler at 1 day and 5 cm in another
    // program: a 4.85e-7 m²/s, RMSE 0.68, 0.75, 0.57 K, biases -0.14, +0.25, +0.24 K
    const stage = soilHeatEquation(princeton());
    const { value, low, high } = stage.estimates[0]!;
    assertAlmostEquals(value, 4.85e-7, 0.15e-7);
    [0.68, 0.75, 0.57].forEach((error, i) => assertAlmostEquals(stage.errors[i]!, error, 0.02));
    [-0.14, 0.25, 0.24].forEach((bias, i) => assertAlmostEquals(stage.biases[i]!, bias, 0.03));
    // begun 45 records later, a from 4e-7 to 8e-7 keeps the error within 0.72 to 0.80 K: no better than
    // a factor of two
    assertGreater(high / low, 2);
    assertLess(low, 4e-7);
    assertGreater(high, 8e-7);
    assert(stage.cannotTell.some((one) => one.includes("cannot pin the diffusivity")));
    const later = soilHeatEquation(princeton(45)).estimates[0]!;
    assert(later.low < value && value < later.high);
  },
});

Deno.test({
  name:
    `soilPair(): USGS MC11 Princeton 1993, wave at 0.5 and 2.5 m against the heat equation${SKIPPED}`,
  ignore: OPEN_DATA === undefined,
  fn() {
    // Source: record Landon et al. 1997 [landon-1997]; wave fitted to all depths by another program:
    // 4.17e-7 m²/s
    const { seconds, temperatures } = princeton();
    const stage = soilPair({
      seconds,
      upper: temperatures[0]!,
      lower: temperatures[4]!,
      distance: 2,
      period: 365 * DAY,
    });
    const [both] = stage.estimates;
    assert(both!.low < 4.17e-7 && 4.17e-7 < both!.high, `${both!.low} ${both!.high}`);
    const whole = soilHeatEquation(princeton()).estimates[0]!;
    assert(both!.low < whole.high && both!.high > whole.low);
  },
});

for (
  const station of [
    "co_la_junta_17_wsw",
    "mt_wolf_point_29_ene",
    "nd_northgate_5_ese",
    "ne_lincoln_8_ene",
    "sd_aberdeen_35_wnw",
  ]
) {
  Deno.test({
    name: `soilPair(), soilHeatEquation(): US Climate Reference Network 2020, ${station}${SKIPPED}`,
    ignore: OPEN_DATA === undefined,
    fn() {
      // Source: records NOAA NCEI; range of tables of soils 0.9e-7 (dry peat) to 14e-7 m²/s (wet
      // gravel), VDI 4640-1 [vdi-4640-2010] (from memory): conductivity over heat capacity
      const column = columns(`uscrn_2020_${station}.csv`);
      const at = (depth: number) => column(`soil_temp_${depth}_daily`);
      const seconds = at(5).map((_, i) => i * DAY);
      const equation = soilHeatEquation({
        seconds,
        depths: [0.05, 0.2, 0.5, 1],
        temperatures: [5, 20, 50, 100].map(at),
      });
      assertLess(equation.error, 0.7);
      const fitted = equation.estimates[0]!;
      assertGreater(fitted.value, 0.9e-7);
      assertLess(fitted.value, 14e-7);
      const pair = soilPair({
        seconds,
        upper: at(5),
        lower: at(100),
        distance: 0.95,
        period: 366 * DAY,
      });
      const wave = pair.estimates[0]!;
      // two ways to the same number: their intervals meet, and neither is narrower than a factor of 1.8
      assert(wave.low < fitted.high && wave.high > fitted.low);
      assertGreater(wave.high / wave.low, 1.8);
      assertGreater(fitted.high / fitted.low, 1.8);
    },
  });
}

const YEAR = 365 * DAY;
const diffusivity = 6e-7;
const depthOfWave = Math.sqrt(diffusivity * YEAR / Math.PI);
const days = Float64Array.from({ length: 400 }, (_, i) => i * DAY);
const wave = (depth: number, normal: () => number, noise: number) =>
  days.map((time) =>
    8 +
    12 * Math.exp(-depth / depthOfWave) *
      Math.cos(2 * Math.PI * time / YEAR - depth / depthOfWave) +
    noise * normal()
  );

Deno.test("soilPair(): the half space under a yearly and a daily wave", () => {
  // Source: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §2.6, exact
  const exact = { seconds: days, upper: wave(0.5, () => 0, 0), lower: wave(2, () => 0, 0) };
  const stage = soilPair({ ...exact, distance: 1.5, period: YEAR });
  for (const { value } of stage.estimates) assertAlmostEquals(value / diffusivity, 1, 1e-9);
  const hours = Float64Array.from({ length: 240 }, (_, i) => i * 3600);
  const short = Math.sqrt(diffusivity * DAY / Math.PI);
  const daily = (depth: number) =>
    hours.map((time) =>
      Math.exp(-depth / short) * Math.cos(2 * Math.PI * time / DAY - depth / short)
    );
  const inADay = soilPair({
    seconds: hours,
    upper: daily(0.05),
    lower: daily(0.2),
    distance: 0.15,
    period: DAY,
    distanceUncertainty: 0.002,
  });
  assertAlmostEquals(inADay.estimates[0]!.value / diffusivity, 1, 1e-9);
  assertThrows(
    () =>
      soilPair({
        seconds: days,
        upper: exact.lower,
        lower: exact.upper,
        distance: 1,
        period: YEAR,
      }),
    InputError,
    "are the probes swapped?",
  );
});

Deno.test("soilPair(): truth inside each interval", () => {
  // Property: 90 to 99 of 100 seeds, noise of 0.5 K and a probe depth off by its uncertainty
  const hits = [0, 0, 0];
  timesOf(100, (normal) => {
    const distance = 1.5 + 0.02 * normal();
    const stage = soilPair({
      seconds: days,
      upper: wave(0.5, normal, 0.5),
      lower: wave(2, normal, 0.5),
      distance,
      period: YEAR,
    });
    stage.estimates.forEach(({ low, high }, j) => {
      if (low <= diffusivity && diffusivity <= high) hits[j]!++;
    });
    return true;
  });
  for (const times of hits) assert(times >= 90 && times <= 99, hits.join(" "));
});

Deno.test("soilHeatEquation(): truth inside the interval", () => {
  // Property: 90 to 99 of 100 seeds; a half space under the yearly wave, noise of 0.2 K on inner probes
  const depths = [0.5, 1, 1.5, 2.5];
  const times = timesOf(100, (normal) => {
    const temperatures = depths.map((depth, d) =>
      wave(depth, d === 0 || d === 3 ? () => 0 : normal, 0.2).slice(0, 150)
    );
    const { low, high } = soilHeatEquation({
      seconds: days.slice(0, 150),
      depths,
      temperatures,
      cell: 0.1,
    })
      .estimates[0]!;
    return low <= diffusivity && diffusivity <= high;
  });
  assert(times >= 90 && times <= 99, `${times}`);
});

Deno.test("soilHeatEquation(): truth inside the interval where every probe is off for good", () => {
  // Property: 90 to 99 of 100 seeds with levels of their own; without, what a probe is off by ties the
  // misfits and the interval is several times as wide
  const depths = [0.5, 1, 1.5, 2.5];
  const widths = [0, 0];
  let seed = 0;
  const times = timesOf(100, (normal) => {
    const temperatures = depths.map((depth, d) => {
      const off = 0.15 * normal();
      return wave(depth, d === 0 || d === 3 ? () => 0 : normal, 0.1).slice(0, 120)
        .map((one) => one + off);
    });
    const fit = (ownLevels: boolean) =>
      soilHeatEquation({ seconds: days.slice(0, 120), depths, temperatures, cell: 0.1, ownLevels })
        .estimates[0]!;
    const { low, high } = fit(true);
    if (seed++ < 8) {
      const other = fit(false);
      widths[0]! += Math.log(high / low);
      widths[1]! += Math.log(other.high / other.low);
    }
    return low <= diffusivity && diffusivity <= high;
  });
  assert(times >= 90 && times <= 99, `${times}`);
  assertGreater(widths[1]! / widths[0]!, 3);
});

Deno.test("conductivityOf(): diffusivity times heat capacity, both doubts in the interval", () => {
  // Property: shares of uncertainty add up in squares
  const stage = soilPair({
    seconds: days,
    upper: wave(0.5, () => 0, 0),
    lower: wave(2, () => 0, 0),
    distance: 1.5,
    period: YEAR,
  });
  const found = conductivityOf(stage.estimates[0]!, 2.4e6, 0.1);
  assertAlmostEquals(found.value, 1.44, 1e-9);
  const share = stage.estimates[0]!.standardUncertainty / diffusivity;
  assertAlmostEquals(found.standardUncertainty / 1.44, Math.hypot(share, 0.1), 1e-9);
  assertGreater(found.high / found.value, Math.exp(0.195));
});

Deno.test("conductivityOf(): truth inside the interval", () => {
  // Property: 90 to 99 of 100 seeds, a diffusivity and a heat capacity that are off as stated
  const times = timesOf(100, (normal) => {
    const found = diffusivity * Math.exp(0.15 * normal());
    const factor = Math.exp(1.96 * 0.15);
    const { low, high } = conductivityOf(
      {
        name: "soil diffusivity",
        key: null,
        unit: "m2/s",
        value: found,
        standardUncertainty: 0.15 * found,
        low: found / factor,
        high: found * factor,
      },
      2.4e6 * Math.exp(0.1 * normal()),
      0.1,
    );
    const truth = diffusivity * 2.4e6;
    return low <= truth && truth <= high;
  });
  assert(times >= 90 && times <= 99, `${times}`);
});
