/**
 * Figures of a run worked out again from the text of hourly.csv alone, with sums of its own: nothing of
 * the library but the hours it wrote.
 *
 * @module
 */
import Papa from "papaparse";

/** A figure worked out again, its unit, and how far rounding in the table can move it. */
export interface Recomputed {
  readonly value: number;
  readonly unit: string;
  readonly allowed: number;
}

/** Columns of the table by head. */
export interface Hours {
  readonly times: readonly string[];
  readonly column: (head: string) => readonly number[];
}

/** Reads hourly.csv. */
export function readHours(text: string): Hours {
  const { data, meta } = Papa.parse<Record<string, string>>(text.trim(), { header: true });
  const heads = meta.fields!;
  return {
    times: data.map((row) => row[heads[0]!]!),
    column: (head) => {
      if (!heads.includes(head)) throw new Error(`no column "${head}"; there are ${heads}`);
      return data.map((row) => row[head] === "" ? NaN : Number(row[head]));
    },
  };
}

const sum = (values: readonly number[]): number => values.reduce((total, one) => total + one, 0);

/** Heat that makes a kilogram of vapour, FAO-56 (1998) [fao56-1998] eq. 3-1, kWh/kg. */
const VAPOUR_HEAT = 2.45e6 / 3.6e6;

/** W of rounding to whole W over a year: five times the root of 8760 hours times 0.29 W, in kWh. */
const ROUNDING = 5 * Math.sqrt(8760) * 0.29 / 1000;

/** First date from 1 July on with an hour below freezing, as results.json writes it; null for none. */
export function firstFreeze(hours: Hours, head: string, rounded = false): string | null {
  const air = hours.column(head);
  const start = hours.times.indexOf("2001-07-01T00:00");
  for (let count = 0; count < air.length; count++) {
    const hour = (start + count) % air.length;
    if (rounded ? air[hour]! > 0 : air[hour]! >= 0) continue;
    const date = hours.times[hour]!.slice(0, 10);
    return hour < start ? date.replace("2001", "2002") : date;
  }
  return null;
}

/** Number of hours below freezing; values that rounding brought to 0 may be on either side. */
function hoursBelowFreezing(air: readonly number[]): Recomputed {
  return {
    value: air.filter((value) => value < 0).length,
    unit: "h",
    allowed: air.filter((value) => value === 0).length,
  };
}

/** All figures that the hours decide, by key of results.json. */
export function figuresFromHours(hours: Hours): Readonly<Record<string, Recomputed>> {
  const { column } = hours;
  const outdoor = column("outdoor temperature (degC)");
  const store = column("house temperature with store (degC)");
  const free = column("house temperature without store (degC)");
  const share = column("fan share charge positive (1)");
  const latent = column("store latent heat into soil (W)");
  const heat = column("store sensible heat into soil (W)").map((value, k) => value + latent[k]!);
  /** kWh while the fan ran one way */
  const part = (values: readonly number[], way: number): Recomputed => ({
    value: way * sum(values.filter((_, k) => share[k]! * way > 0)) / 1000,
    unit: "kWh",
    allowed: 2 * ROUNDING,
  });
  const [heatIn, heatOut] = [part(heat, 1), part(heat, -1)];
  const fanEnergy = sum(column("fan power (W)")) / 1000;
  /** the running fan's power is rounded the same way in each of its hours */
  const fanRounding = 0.05 * sum(share.map(Math.abs)) / 1000;
  const degreeHours = sum(outdoor.map((value) => Math.max(0, 18.3 - value)));
  const sorted = outdoor.toSorted((a, b) => a - b);
  return {
    "climate.meanTemperature": { value: sum(outdoor) / 8760, unit: "degC", allowed: 0.001 },
    "climate.coldestHour": { value: Math.min(...outdoor), unit: "degC", allowed: 0.0051 },
    "climate.design99_6": { value: sorted[Math.round(0.004 * 8759)]!, unit: "degC", allowed: 0.1 },
    "climate.heatingDegreeDays18_3": { value: degreeHours / 24, unit: "K d", allowed: 0.5 },
    "climate.globalRadiation": {
      value: sum(column("global radiation (W/m2)")) / 1000,
      unit: "kWh/m2",
      allowed: 0.1,
    },
    "soil.meanTemperature": {
      value: sum(column("undisturbed soil temperature at tube depth (degC)")) / 8760,
      unit: "degC",
      allowed: 0.001,
    },
    "house.coldestHourNoStore": { value: Math.min(...free), unit: "degC", allowed: 0.0051 },
    "house.hoursBelowFreezingNoStore": hoursBelowFreezing(free),
    "store.coldestHour": { value: Math.min(...store), unit: "degC", allowed: 0.0051 },
    "store.hoursBelowFreezing": hoursBelowFreezing(store),
    "store.heatIn": heatIn,
    "store.heatOut": heatOut,
    "store.latentIn": part(latent, 1),
    "store.latentOut": part(latent, -1),
    "store.recovery": {
      value: heatOut.value / heatIn.value,
      unit: "1",
      allowed: 3 * ROUNDING / heatIn.value,
    },
    "store.cop": {
      value: heatOut.value / fanEnergy,
      unit: "1",
      allowed: (3 * ROUNDING + heatOut.value * fanRounding / fanEnergy) / fanEnergy,
    },
    "fan.energyPerYear": { value: fanEnergy, unit: "kWh", allowed: fanRounding },
  };
}

/** kWh of latent heat into the soil in the year and of the water that condensed, less evaporated. */
export function latentHeats(hours: Hours): { readonly heat: number; readonly water: number } {
  return {
    heat: sum(hours.column("store latent heat into soil (W)")) / 1000,
    water: sum(hours.column("condensate (kg/h)")) * VAPOUR_HEAT,
  };
}

/** h after midnight about which the sun's radiation of the year lies, local standard time. */
export function middleOfSun(hours: Hours): number {
  const sun = hours.column("global radiation (W/m2)");
  const moment = hours.times.map((time) => Number(time.slice(11, 13)) + 0.5);
  return sum(sun.map((value, k) => value * moment[k]!)) / sum(sun);
}

/** Sensible heat into the walls, W, that the air of each hour brought: what it lost and the fan's heat. */
export function heatByAir(hours: Hours): readonly number[] {
  const rate = hours.column("air through tubes (W/K)");
  const intake = hours.column("tube intake temperature (degC)");
  const outlet = hours.column("tube outlet temperature (degC)");
  const fan = hours.column("fan power (W)");
  return rate.map((flow, hour) =>
    flow === 0 ? 0 : flow * (intake[hour]! - outlet[hour]!) + fan[hour]!
  );
}

/**
 * W/K that the air carries, from the hours in which the fan charged all the time: heat to the walls over
 * the cooling of the air, which the fan's own heat warms first.
 *
 * @returns ratio of the sums, and how many hours there were
 */
export function carriedByAir(hours: Hours, fanRise: number): { rate: number; count: number } {
  const share = hours.column("fan share charge positive (1)");
  const intake = hours.column("tube intake temperature (degC)");
  const outlet = hours.column("tube outlet temperature (degC)");
  const sensible = hours.column("store sensible heat into soil (W)");
  const full = [...share.keys()].filter((hour) => share[hour] === 1);
  return {
    rate: sum(full.map((hour) => sensible[hour]!)) /
      sum(full.map((hour) => intake[hour]! - outlet[hour]! + fanRise)),
    count: full.length,
  };
}
