/** Air along one tube, as it is and without its vapour. @module */
import { airDensity, relativeHumidityFromRatio } from "../air/mod.ts";
import type { TubesResult } from "./types.ts";
import { marchTube, type MoistAir, type TubeMarch } from "./wet.ts";

const PIECES = 60;

/** One place along the tube, with wet and with dry air. */
export interface AlongRow {
  /** m from the inlet, end of the piece */
  readonly along: number;
  /** degC of moist air */
  readonly temperature: number;
  /** 0 to 1 */
  readonly relativeHumidity: number;
  /** degC of the same air without vapour */
  readonly dryTemperature: number;
  /** W of each metre, sensible, moist air */
  readonly sensible: number;
  /** W of each metre, latent */
  readonly latent: number;
  /** W of each metre, dry air */
  readonly dry: number;
}

/** One tube followed from inlet to outlet. */
export interface TubeAlong {
  /** places along the tube */
  readonly rows: readonly AlongRow[];
  /** degC and 0 to 1 of the air drawn in */
  readonly intake: { readonly temperature: number; readonly relativeHumidity: number };
  /** degC of the wall, the same all along */
  readonly wall: number;
  /** the whole tube with moist air, W */
  readonly moist: TubeMarch;
  /** the whole tube with dry air, W */
  readonly dry: TubeMarch;
}

/** Air, wall and tube. */
export interface AlongQuestion {
  /** tube at its design flow */
  readonly tubes: Pick<TubesResult, "diameter" | "length" | "filmCoefficient" | "flowPerTube">;
  /** air drawn in, degC and kg/kg */
  readonly inlet: MoistAir;
  /** degC */
  readonly wall: number;
  /** Pa */
  readonly pressure: number;
}

/**
 * Follows the air through one tube whose wall stays at one temperature and holds no water at the
 * start, once as it is and once without its vapour.
 *
 * @param question air, wall and tube
 */
export function tubeAlong(question: AlongQuestion): TubeAlong {
  const { tubes, inlet, wall, pressure } = question;
  const moist = march(question, inlet.humidityRatio);
  const dry = march(question, 0);
  const piece = tubes.length / PIECES;
  const humidity = (air: MoistAir) =>
    relativeHumidityFromRatio(air.temperature, air.humidityRatio, pressure);
  return {
    wall,
    moist,
    dry,
    intake: { temperature: inlet.temperature, relativeHumidity: humidity(inlet) },
    rows: moist.pieces.map((wet, index) => ({
      along: (index + 1) * piece,
      temperature: wet.outlet.temperature,
      relativeHumidity: Math.min(1, humidity(wet.outlet)),
      dryTemperature: dry.pieces[index]!.outlet.temperature,
      sensible: wet.sensible / piece,
      latent: wet.latent / piece,
      dry: dry.pieces[index]!.sensible / piece,
    })),
  };
}

function march({ tubes, inlet, wall, pressure }: AlongQuestion, humidityRatio: number): TubeMarch {
  const { temperature } = inlet;
  return marchTube({
    inlet: { temperature, humidityRatio },
    wallTemperatures: new Array<number>(PIECES).fill(wall),
    waterSupply: 0,
    diameter: tubes.diameter,
    length: tubes.length,
    filmCoefficient: tubes.filmCoefficient,
    dryAirFlow: tubes.flowPerTube * airDensity(temperature, 0, pressure),
    pressure,
  });
}
