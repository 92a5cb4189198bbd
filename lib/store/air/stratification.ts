/** How much warmer the air at the ridge is than the mean of the house. @module */
import { DRY_AIR_HEAT_CAPACITY } from "../../air/mod.ts";
import { GRAVITY, HOUR, ZERO_CELSIUS } from "../../basics/mod.ts";
import { leakageRate } from "../../house/mod.ts";
import type { HouseModel, HouseState } from "../../house/types.ts";

/** Share of the heat that rises from below that stirs warm air down. Ball 1960 [ball-1960]. */
const STIRRED_DOWN = 0.2;
/**
 * Share of the heat from floor and crop that rises as warm air: convection 5.0 of 10.1 W/(m² K)
 * upwards, ISO 6946 [iso-6946-2017]; the rest goes as radiation.
 */
const RISING_FROM_BELOW = 5.0 / 10.1;
/** Entrainment of a plume along a wall heated over its height. Parker et al. 2020 [parker-2020]. */
const ENTRAINMENT = 0.068;

/** A sunlit house in two layers of equal volume. */
export interface TwoLayers {
  /** W released along walls and under the roof */
  readonly rising: number;
  /** W from floor and crop to the air, by convection and radiation */
  readonly below: number;
  /** m³/s that leave the upper layer: the store's intake, vents, leakage */
  readonly leaving: number;
  /** m³/s that circulation fans exchange between the layers */
  readonly mixed: number;
  /** m, length of the house */
  readonly length: number;
  /** m, height of the lower layer */
  readonly height: number;
  /** W/K through the skin of the upper layer */
  readonly skin: number;
  /** J/(m³ K) of the air */
  readonly heatCapacity: number;
  /** degC */
  readonly temperature: number;
}

/**
 * Volume flow at the top of a plume along a wall that is heated evenly over its height.
 * V = 3/4·(4/5)^(1/3)·α^(2/3)·B^(1/3)·H·L^(2/3), B = g·Q/(ρc·T), from dV/dz = α·L·w, dM/dz = buoyancy
 * and a buoyancy flux that grows with height.
 *
 * Source: plume equations of Morton, Taylor & Turner 1956 [morton-1956] (from memory), solved for a
 * vertical source; α = 0.068 ± 0.006 measured by Parker et al. 2020 [parker-2020].
 *
 * @param heat W into the air along the wall
 * @param length of the wall, m
 * @param height of the wall, m
 * @param heatCapacity J/(m³ K) of the air
 * @param temperature degC of the air
 * @returns m³/s
 */
export function wallPlume(
  heat: number,
  length: number,
  height: number,
  heatCapacity: number,
  temperature: number,
): number {
  const buoyancy = GRAVITY * heat / (heatCapacity * (temperature + ZERO_CELSIUS));
  return 0.75 * Math.cbrt(0.8) * Math.cbrt(ENTRAINMENT ** 2) * Math.cbrt(buoyancy) * height *
    Math.cbrt(length ** 2);
}

/**
 * K by which the upper half of the house is warmer than its mean.
 *
 * Warm air rises along sunlit walls and gathers under the roof. What the plume carries up comes down
 * again between, unless the store's intake, vents and leakage take it away first: the flow through
 * the middle is the larger of the two, as in a filling and an emptying box. Circulation fans exchange
 * more, heat from the floor stirs a fifth of what rises of it down, and the upper skin loses a little:
 * 2·ΔT = (Q − 0.2·Q_below)/(ρc·(max(V_plume, V_leaving) + V_mixed) + K). It vanishes without sun and
 * has no jumps.
 *
 * Source: box filled by a plume, Baines & Turner 1969 [baines-turner-1969]; emptied at the top,
 * Linden, Lane-Serff & Smeed 1990 [linden-1990] (both from memory); stirring Ball 1960 [ball-1960].
 *
 * @param layers heat, flows and size
 * @returns K, 0 or above
 */
export function upperExcess(layers: TwoLayers): number {
  const { rising, below, leaving, mixed, heatCapacity, temperature } = layers;
  const heat = rising - STIRRED_DOWN * RISING_FROM_BELOW * below;
  if (heat <= 0) return 0;
  const plume = wallPlume(heat, layers.length, layers.height, heatCapacity, temperature);
  const exchange = heatCapacity * (Math.max(plume, leaving) + mixed) + layers.skin;
  return heat / exchange / 2;
}

/** J/(m³ K) of the air of the house. */
function airHeat(house: HouseModel): number {
  return house.dryAirMass / house.geometry.volume * DRY_AIR_HEAT_CAPACITY;
}

/**
 * K by which air drawn at the ridge is warmer than the mean of the house in an hour.
 *
 * @param house the house with its hourly sun
 * @param state of the house now
 * @param hour of the year
 * @param drawnHeat W/K of the air that the store draws at the ridge
 * @param mixed m³/s that circulation fans move
 * @returns K
 */
export function ridgeExcess(
  house: HouseModel,
  state: HouseState,
  hour: number,
  drawnHeat: number,
  mixed: number,
): number {
  const rising = house.solarRising[hour]!;
  if (rising <= 0) return 0;
  const { inputs, geometry } = house;
  const difference = state.airTemperature - house.outsideTemperature[hour]!;
  const changes = leakageRate(inputs, difference, house.windSpeed[hour]!) +
    state.ventOpening * inputs.ventCapacity;
  return upperExcess({
    rising,
    below: Math.max(0, state.fromBelow ?? 0),
    leaving: drawnHeat / airHeat(house) + changes * geometry.volume / HOUR,
    mixed,
    length: inputs.length,
    height: geometry.volume / geometry.floorArea / 2,
    skin: (house.glazingConductance[hour]! + house.opaqueConductance[hour]!) / 2,
    heatCapacity: airHeat(house),
    temperature: state.airTemperature,
  });
}
