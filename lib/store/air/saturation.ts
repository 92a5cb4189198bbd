/** Saturated air by table, for the inner loop. @module */
import { saturationHumidityRatio } from "../../air/mod.ts";

/** Humidity ratio of saturated air at one pressure, in even steps of temperature. */
export interface SaturationTable {
  /** degC of the first entry */
  readonly from: number;
  /** entries per K */
  readonly perKelvin: number;
  /** kg/kg */
  readonly ratio: Float64Array;
}

const FROM = -60;
const TO = 75; // saturated air at 75 °C still fits the thinnest air a climate file may hold (45 kPa)
const PER_KELVIN = 8;

/** Builds the table, −60 to 75 °C every 0.125 K; linear between (within 1e-5 of the value). */
export function saturationTable(pressure: number): SaturationTable {
  const count = (TO - FROM) * PER_KELVIN + 1;
  const ratio = Float64Array.from(
    { length: count },
    (_, k) => saturationHumidityRatio(FROM + k / PER_KELVIN, pressure),
  );
  return { from: FROM, perKelvin: PER_KELVIN, ratio };
}

/** Index of the table interval of a temperature, held inside the table. */
export function saturationIndex(table: SaturationTable, temperature: number): number {
  const place = (temperature - table.from) * table.perKelvin;
  return place <= 0 ? 0 : place >= table.ratio.length - 1 ? table.ratio.length - 2 : place | 0;
}

/** Saturated humidity ratio, kg/kg. */
export function saturatedRatio(table: SaturationTable, temperature: number): number {
  const k = saturationIndex(table, temperature);
  const low = table.ratio[k]!;
  const part = (temperature - table.from) * table.perKelvin - k;
  return low + part * (table.ratio[k + 1]! - low);
}

/** degC at which air of a humidity ratio is saturated: the table read backwards by halving. */
export function dewPointOf(table: SaturationTable, ratio: number): number {
  let low = 0;
  let high = table.ratio.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (table.ratio[middle]! <= ratio) low = middle;
    else high = middle;
  }
  const below = table.ratio[low]!;
  const part = (ratio - below) / (table.ratio[low + 1]! - below);
  return table.from + (low + part) / table.perKelvin;
}
