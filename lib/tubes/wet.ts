/**
 * Heat and vapour between moist air and a tube wall, wet or dry; sensible and latent always apart.
 *
 * @module
 */
import {
  DRY_AIR_HEAT_CAPACITY,
  LATENT_HEAT,
  massTransferCoefficient,
  moistEnthalpy,
  saturationHumidityRatio,
  VAPOUR_HEAT_CAPACITY,
} from "../air/mod.ts";
import { WATER_HEAT_CAPACITY } from "../basics/mod.ts";

/** Moist air. */
export interface MoistAir {
  /** degC */
  readonly temperature: number;
  /** kg of water per kg of dry air */
  readonly humidityRatio: number;
}

/** A piece of tube whose wall has one temperature. */
export interface WallPiece {
  /** air at the inlet */
  readonly inlet: MoistAir;
  /** degC */
  readonly wallTemperature: number;
  /** inside surface, m² */
  readonly surface: number;
  /** dry, W/(m² K) */
  readonly filmCoefficient: number;
  /** kg of dry air per s */
  readonly dryAirFlow: number;
  /** Pa */
  readonly pressure: number;
  /** most that can evaporate: kg/s of water at hand; Infinity for a wall that stays wet */
  readonly waterSupply: number;
}

/** What a piece of wall exchanges with the air; heat positive into the wall. */
export interface WallExchange {
  /** air at the outlet */
  readonly outlet: MoistAir;
  /** W */
  readonly sensible: number;
  /** W, vapour at air temperature turned to water at wall temperature, or back */
  readonly latent: number;
  /** kg/s onto the wall; negative where water evaporates */
  readonly condensate: number;
  /** kg/s of mist that the air sheds because it would be over-saturated */
  readonly mist: number;
}

/**
 * Exchange of a piece of wall of one temperature with the air that passes.
 *
 * T_out = T_w + (T_in − T_w)·exp(−h·A/ṁc), w_out = w_s(T_w) + (w_in − w_s(T_w))·exp(−g·A/ṁ) where
 * water condenses, or evaporates with water at hand; else w stays. Air that would come out
 * over-saturated sheds the excess as mist and takes up its heat.
 *
 * Energy: ṁ(h_in − h_out) = sensible + latent + c_water·(condensate·T_wall + mist·T_out), exactly.
 * Not modelled: frost growing on a wall below 0 degC (heat of fusion), droplets carried on.
 *
 * Source: exact for constant wall temperature, with {@link massTransferCoefficient}.
 *
 * @param piece the wall and the air
 * @returns outlet air, heat and water
 */
export function wallExchange(piece: WallPiece): WallExchange {
  const { inlet, wallTemperature, surface, dryAirFlow, pressure, filmCoefficient } = piece;
  const heatCapacity = DRY_AIR_HEAT_CAPACITY + inlet.humidityRatio * VAPOUR_HEAT_CAPACITY;
  const kept = Math.exp(-filmCoefficient * surface / (dryAirFlow * heatCapacity));
  const temperature = wallTemperature + (inlet.temperature - wallTemperature) * kept;
  const film = (inlet.temperature + wallTemperature) / 2;
  const transfer = massTransferCoefficient(filmCoefficient, film, pressure);
  const atWall = saturationHumidityRatio(wallTemperature, pressure);
  const wanted = -dryAirFlow * (inlet.humidityRatio - atWall) *
    Math.expm1(-transfer * surface / dryAirFlow);
  const condensate = Math.max(wanted, -piece.waterSupply);
  const dried: MoistAir = {
    temperature,
    humidityRatio: inlet.humidityRatio - condensate / dryAirFlow,
  };
  const outlet = shedMist(dried, pressure);
  return {
    outlet,
    sensible: dryAirFlow * heatCapacity * (inlet.temperature - temperature),
    latent: condensate *
      (LATENT_HEAT + VAPOUR_HEAT_CAPACITY * temperature - WATER_HEAT_CAPACITY * wallTemperature),
    condensate,
    mist: dryAirFlow * (dried.humidityRatio - outlet.humidityRatio),
  };
}

/**
 * Air without more vapour than it can hold; the excess leaves as water at the final temperature.
 *
 * @param air moist air, perhaps over-saturated
 * @param pressure Pa
 * @returns the same air, or saturated air of the same energy less that of the water
 */
function shedMist(air: MoistAir, pressure: number): MoistAir {
  if (air.humidityRatio <= saturationHumidityRatio(air.temperature, pressure)) return air;
  const energy = moistEnthalpy(air.temperature, air.humidityRatio);
  const excess = (temperature: number): number => {
    const ratio = saturationHumidityRatio(temperature, pressure);
    return moistEnthalpy(temperature, ratio) +
      WATER_HEAT_CAPACITY * temperature * (air.humidityRatio - ratio) - energy;
  };
  let temperature = air.temperature;
  for (let round = 0; round < 30; round++) {
    const off = excess(temperature);
    const slope = (excess(temperature + 1e-4) - off) / 1e-4;
    const step = off / slope;
    temperature -= step;
    if (Math.abs(step) < 1e-10) break;
  }
  return { temperature, humidityRatio: saturationHumidityRatio(temperature, pressure) };
}

/** A tube cut into pieces for {@link marchTube}. */
export interface WetTube {
  /** air at the inlet */
  readonly inlet: MoistAir;
  /** degC of the wall of each piece, in the direction of the air */
  readonly wallTemperatures: ArrayLike<number>;
  /** most water that can evaporate from each piece, kg/s; 0 for a dry wall, Infinity for a wet one */
  readonly waterSupply: ArrayLike<number> | number;
  /** inside, m */
  readonly diameter: number;
  /** m of the whole tube */
  readonly length: number;
  /** dry, W/(m² K) */
  readonly filmCoefficient: number;
  /** kg of dry air per s */
  readonly dryAirFlow: number;
  /** Pa */
  readonly pressure: number;
}

/** Exchange along a tube. */
export interface TubeMarch {
  /** air at the outlet */
  readonly outlet: MoistAir;
  /** W of the whole tube, into the wall */
  readonly sensible: number;
  /** W latent */
  readonly latent: number;
  /** kg/s of the whole tube, mist included; negative where more evaporates than condenses */
  readonly condensate: number;
  /** exchange of each piece */
  readonly pieces: readonly WallExchange[];
}

/**
 * Follows the air along a tube, piece by piece.
 *
 * @param tube tube, walls and inlet air
 * @returns exchange by piece and as a sum
 */
export function marchTube(tube: WetTube): TubeMarch {
  const count = tube.wallTemperatures.length;
  const surface = Math.PI * tube.diameter * tube.length / count;
  const pieces: WallExchange[] = [];
  let inlet = tube.inlet;
  for (let i = 0; i < count; i++) {
    const piece = wallExchange({
      inlet,
      wallTemperature: tube.wallTemperatures[i]!,
      surface,
      filmCoefficient: tube.filmCoefficient,
      dryAirFlow: tube.dryAirFlow,
      pressure: tube.pressure,
      waterSupply: typeof tube.waterSupply === "number"
        ? tube.waterSupply / count
        : tube.waterSupply[i]!,
    });
    pieces.push(piece);
    inlet = piece.outlet;
  }
  const sum = (value: (piece: WallExchange) => number): number =>
    pieces.reduce((total, piece) => total + value(piece), 0);
  return {
    outlet: inlet,
    sensible: sum((piece) => piece.sensible),
    latent: sum((piece) => piece.latent),
    condensate: sum((piece) => piece.condensate + piece.mist),
    pieces,
  };
}
