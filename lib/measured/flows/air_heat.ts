/** Heat and water that air leaves in a store, from what probes and a flow meter say. @module */
import {
  moistEnthalpy,
  moistVolume,
  MOLAR_MASS_RATIO,
  saturationPressureOverWater,
} from "../../air/mod.ts";
import { InputError } from "../../basics/mod.ts";
import { type Estimates, propagate, type Uncertain } from "../uncertainty/propagate.ts";

/** Where each reading stands in the inputs of `airHeat`. */
export const AIR_READINGS = [
  "intakeTemperature",
  "intakeHumidity",
  "outletTemperature",
  "outletHumidity",
  "airFlow",
] as const;

/** J/(kg K), liquid water */
const WATER_HEAT_CAPACITY = 4186;

/** Heat and water left in the store, each with its standard uncertainty. */
export interface AirHeat {
  /** W, positive where the air leaves heat in the store */
  readonly heat: number;
  /** W */
  readonly heatUncertainty: number;
  /** W, what the air gives by its temperature alone */
  readonly sensible: number;
  /** W */
  readonly sensibleUncertainty: number;
  /** W, the rest: water that condenses, negative where water evaporates */
  readonly latent: number;
  /** W */
  readonly latentUncertainty: number;
  /** kg/s, positive where water condenses */
  readonly water: number;
  /** kg/s */
  readonly waterUncertainty: number;
}

/**
 * Heat and water that an air flow leaves between intake and outlet, steady for the time of the
 * readings: moist enthalpy of both ends by mass of dry air, condensate leaving (or water taken up)
 * at the temperature of the outlet (ASHRAE Fundamentals 2017 [ashrae-2017] ch. 1). Uncertainty by
 * the law of propagation with correlated inputs (GUM [gum-2008] 5.2.2).
 *
 * @param readings in the order of `AIR_READINGS`: temperatures in degC, relative humidities over
 * water 0 to 1, air flow in m³/s at the state of the intake; with their covariance, so that two
 * probes that err together say so
 * @param pressure Pa
 * @throws InputError where readings are too few, missing or out of range
 */
export function airHeat(readings: Estimates, pressure: number): AirHeat {
  AIR_READINGS.forEach((name, i) => {
    const value = readings.values[i];
    const humidity = name.endsWith("Humidity");
    const least = humidity || name === "airFlow" ? 0 : -Infinity;
    const most = humidity ? 1 : Infinity;
    if (value === undefined || !Number.isFinite(value) || value < least || value > most) {
      const expected = humidity
        ? "0 to 1 (a probe above 1 is wet or out of true)"
        : name === "airFlow"
        ? "0 or more: swap intake and outlet with the direction"
        : "a temperature in degC";
      throw new InputError(`air heat: ${name} is ${value}; expected ${expected}`);
    }
  });
  const found = propagate(readings, (values) => airFlowHeat(values, pressure));
  return named(found);
}

/** Humidity ratio, kg/kg, also a hair outside 0 to 1 where the slope at the limit is taken. */
function ratioOf(temperature: number, relativeHumidity: number, pressure: number): number {
  const vapour = relativeHumidity * saturationPressureOverWater(temperature);
  return MOLAR_MASS_RATIO * vapour / (pressure - vapour);
}

/**
 * Heat, its sensible and latent parts in W, and water in kg/s, of readings that need not be within
 * their range; see {@link airHeat}.
 *
 * @param values in the order of `AIR_READINGS`: degC, 0 to 1, degC, 0 to 1, m³/s
 * @param pressure Pa
 */
export function airFlowHeat(values: readonly number[], pressure: number): number[] {
  const [warm, intakeHumidity, cool, outletHumidity, airFlow] = values as [
    number,
    number,
    number,
    number,
    number,
  ];
  const before = ratioOf(warm, intakeHumidity, pressure);
  const after = ratioOf(cool, outletHumidity, pressure);
  const dryAir = airFlow / moistVolume(warm, before, pressure);
  const water = dryAir * (before - after);
  const heat = dryAir * (moistEnthalpy(warm, before) - moistEnthalpy(cool, after)) -
    water * WATER_HEAT_CAPACITY * cool;
  const sensible = dryAir * (moistEnthalpy(warm, before) - moistEnthalpy(cool, before));
  return [heat, sensible, heat - sensible, water];
}

function named({ values, uncertainties }: Uncertain): AirHeat {
  const [heat, sensible, latent, water] = values as [number, number, number, number];
  const [heatUncertainty, sensibleUncertainty, latentUncertainty, waterUncertainty] =
    uncertainties as [number, number, number, number];
  return {
    heat,
    heatUncertainty,
    sensible,
    sensibleUncertainty,
    latent,
    latentUncertainty,
    water,
    waterUncertainty,
  };
}
