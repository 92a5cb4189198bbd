/** Heat in barrels and masonry; the water freezes between 0 and -1 degC. @module */
import {
  HEAT_OF_FUSION,
  ICE_HEAT_CAPACITY,
  WATER_DENSITY,
  WATER_HEAT_CAPACITY,
} from "../basics/mod.ts";
import type { HouseInputs, HouseModel, MassStore } from "./types.ts";

/** J/(m³ K) of a cubic metre of water, of the same once it is ice, and J/m³ set free on freezing. */
const WATER_VOLUME_HEAT = WATER_DENSITY * WATER_HEAT_CAPACITY;
const ICE_VOLUME_HEAT = WATER_DENSITY * ICE_HEAT_CAPACITY;
const FUSION_HEAT = WATER_DENSITY * HEAT_OF_FUSION;
/**
 * J/(m³ K) and W/(m K) of brick and concrete (EN ISO 10456 [iso-10456-2007], concrete 2.0e6 and
 * 1.15 to 1.65, from memory).
 */
const MASONRY_HEAT = 2e6;
const MASONRY_CONDUCTIVITY = 1.3;
/** W/(m² K) of a barrel: convection 3 and radiation 5 (common practice, no source). */
const BARREL_FILM = 8;

/** K below 0 degC over which barrels freeze through, from the wall inward (common practice, no source). */
export const MASS_FREEZING_RANGE = 1;

/** m³ of a drum. */
export const DRUM_VOLUME = 0.208;
/** m, a drum's width and height. */
const DRUM_WIDTH = 0.57;
const DRUM_HEIGHT = 0.85;
/** m² of a drum's side, and of one of its ends. */
const DRUM_SIDE = Math.PI * DRUM_WIDTH * DRUM_HEIGHT;
const DRUM_END = Math.PI * DRUM_WIDTH ** 2 / 4;

/**
 * Surface through which drums exchange heat with the house when they stand side by side along a wall,
 * in a rack above one another where one row is not enough. Each touches its neighbours and the wall:
 * the half of its side that faces the house counts, and the top of the uppermost. What stands on
 * something, faces the wall or closes a gap does not; so a single row has half its surface all round.
 *
 * @param count number of drums, of 208 L, 0.57 m across and 0.85 m high; may be broken
 * @param wall m, length of the wall
 * @returns m²
 */
export function drumSurface(count: number, wall: number): number {
  return count * DRUM_SIDE / 2 + Math.min(count, drumsInRow(wall)) * DRUM_END;
}

/**
 * Number of drums side by side along a wall, one at least.
 *
 * @param wall m, length of the wall
 */
export function drumsInRow(wall: number): number {
  return Math.max(1, Math.floor(wall / DRUM_WIDTH));
}

/** A mass and what acts on it. */
export interface MassMoment {
  readonly store: MassStore;
  /** the same unit: coupling to the air */
  readonly conductance: number;
}

/**
 * Heat content above liquid water at 0 degC.
 *
 * @param store heat per kelvin
 * @param temperature degC
 */
export function massContent(store: MassStore, temperature: number): number {
  if (temperature >= 0) return store.thawed * temperature;
  if (temperature >= -MASS_FREEZING_RANGE) return store.freezing * temperature;
  return -store.freezing * MASS_FREEZING_RANGE +
    store.frozen * (temperature + MASS_FREEZING_RANGE);
}

/**
 * Temperature at which content + conductance·temperature reaches a total: the implicit step of the
 * mass.
 *
 * @param moment store and conductance
 * @param total content at the start, plus sun, plus conductance times air temperature
 * @returns degC
 */
export function massTemperature(moment: MassMoment, total: number): number {
  const { store, conductance } = moment;
  if (total >= 0) return total / (store.thawed + conductance);
  const whole = -(store.freezing + conductance) * MASS_FREEZING_RANGE;
  if (total >= whole) return total / (store.freezing + conductance);
  return (total - whole) / (store.frozen + conductance) - MASS_FREEZING_RANGE;
}

/** Heat per kelvin of the range a temperature lies in. */
export function massStoreAt(store: MassStore, temperature: number): number {
  if (temperature >= 0) return store.thawed;
  return temperature >= -MASS_FREEZING_RANGE ? store.freezing : store.frozen;
}

/**
 * Capacities and films of barrels and of masonry, the latter through half its mean thickness; the
 * sun on both is shared by surface.
 *
 * @param inputs house section of the study
 * @returns `massStore` and `masonryStore` in J/K, conductances in W/K
 */
export function thermalMass(
  inputs: HouseInputs,
): Pick<
  HouseModel,
  "massStore" | "massConductance" | "masonryStore" | "masonryConductance" | "masonrySunShare"
> {
  const [volume, surface] = [inputs.masonryVolume, inputs.masonrySurface];
  const water = inputs.waterVolume > 0 ? inputs.waterSurface * BARREL_FILM : 0;
  const masonry = volume > 0 && surface > 0
    ? surface / (1 / BARREL_FILM + volume / surface / 2 / MASONRY_CONDUCTIVITY)
    : 0;
  const held = water > 0 ? inputs.waterVolume : 0;
  const seen = (water > 0 ? inputs.waterSurface : 0) + (masonry > 0 ? surface : 0);
  return {
    massStore: {
      thawed: held * WATER_VOLUME_HEAT,
      freezing: held *
        ((WATER_VOLUME_HEAT + ICE_VOLUME_HEAT) / 2 + FUSION_HEAT / MASS_FREEZING_RANGE),
      frozen: held * ICE_VOLUME_HEAT,
    },
    massConductance: water,
    masonryStore: masonry > 0 ? volume * MASONRY_HEAT : 0,
    masonryConductance: masonry,
    masonrySunShare: masonry > 0 ? surface / seen : 0,
  };
}
