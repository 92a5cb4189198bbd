/** The hours in which charging the store pays best. @module */
import { HOUR, KILOWATT_HOUR } from "../../basics/mod.ts";

/** Hours next to each other in which the store is charged. */
export interface ChargingSpell {
  /** hours ahead at which it starts, from 0 */
  readonly from: number;
  /** hours ahead at which it ends */
  readonly to: number;
  /** kWh into the soil, sensible and latent */
  readonly heat: number;
  /** kWh of the fan */
  readonly fanEnergy: number;
  /** heat over fan energy, a ratio; not a number for a fan without power */
  readonly ratio: number;
}

/** W below which an hour does not count as charging */
const LEAST_HEAT = 50;

/**
 * Spells of charging, those with most heat for each kilowatt-hour of the fan first.
 *
 * @param heat W into the soil, mean of each hour
 * @param fanPower W of the fan, mean of each hour
 */
export function chargingSpells(heat: Float64Array, fanPower: Float64Array): ChargingSpell[] {
  const spells: ChargingSpell[] = [];
  for (let from = 0; from < heat.length; from++) {
    if (!(heat[from]! > LEAST_HEAT)) continue;
    let [to, stored, spent] = [from, 0, 0];
    for (; to < heat.length && heat[to]! > LEAST_HEAT; to++) {
      stored += heat[to]! * HOUR / KILOWATT_HOUR;
      spent += fanPower[to]! * HOUR / KILOWATT_HOUR;
    }
    const ratio = spent > 0 ? stored / spent : NaN;
    spells.push({ from, to, heat: stored, fanEnergy: spent, ratio });
    from = to;
  }
  return spells.sort((a, b) => b.ratio - a.ratio || b.heat - a.heat);
}
