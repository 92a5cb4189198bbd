/** Hour by hour, where the light that comes in through the glazing ends. @module */
import { glazingShares, type HourlySun } from "../../sun/mod.ts";
import { DEGREE } from "../../basics/mod.ts";
import type { GlazingOptics } from "../../sun/mod.ts";
import type { HouseGeometry } from "../types.ts";
import { beamLanding, sunDirection } from "./beam_landing.ts";
import {
  addLight,
  diffuseEnds,
  endedLight,
  type LightEnds,
  type LightSurface,
  noLight,
} from "./light_inside.ts";

/** Light let in through one part of the skin, bars and dirt taken off, W, hour by hour. */
export interface LetIn {
  /** index of the part */
  readonly part: number;
  /** W of beam */
  readonly beam: Float64Array;
  /** W of sky and ground light */
  readonly diffuse: Float64Array;
}

/** Share of a beam that a glazing lets through or absorbs from within, bars and dirt taken off. */
function beamGone(optics: GlazingOptics, lightFactor: number): (cosine: number) => number {
  const steps = 500;
  const values = Float64Array.from({ length: steps + 1 }, (_, i) => {
    const shares = glazingShares(optics, Math.min(90, Math.acos(i / steps) / DEGREE));
    return lightFactor * (1 - shares.reflected);
  });
  return (cosine) => {
    const at = Math.min(steps - 1e-9, Math.max(0, cosine * steps));
    const low = Math.floor(at);
    return values[low]! + (at - low) * (values[low + 1]! - values[low]!);
  };
}

/** Cosine between the rays and each part from within. */
function cosinesWithin(geometry: HouseGeometry, elevation: number, azimuth: number): number[] {
  const up = elevation * DEGREE;
  return geometry.parts.map(({ plane }) => {
    const turn = (azimuth - plane.azimuth) * DEGREE;
    const tilt = plane.tilt * DEGREE;
    return -(Math.sin(up) * Math.cos(tilt) + Math.cos(up) * Math.sin(tilt) * Math.cos(turn));
  });
}

/** What {@link lightEnds} needs. */
export interface LightEndsInputs {
  readonly geometry: HouseGeometry;
  readonly optics: GlazingOptics;
  /** share of the light left by bars, dirt and drops, 0 to 1 */
  readonly lightFactor: number;
  /** the parts of the geometry in order, the floor last */
  readonly surfaces: readonly LightSurface[];
  readonly sun: HourlySun;
  /** light through each glazed part */
  readonly letIn: readonly LetIn[];
}

/**
 * Where the light inside ends, hour by hour. Beam falls where the sun puts it: what the surface there
 * does not absorb or let out it throws back evenly, as a pane sends the diffuse light in.
 *
 * @returns W, hour by hour
 */
export function lightEnds(given: LightEndsInputs): LightEnds[] {
  const { geometry, optics, lightFactor, surfaces, sun, letIn } = given;
  const ends = diffuseEnds(surfaces);
  const landing = beamLanding(surfaces);
  const gone = beamGone(optics, lightFactor);
  const facing = geometry.parts.find(({ side }) => side === "front")?.plane.azimuth ?? 0;
  return Array.from(sun.cosZenith, (_, hour) => {
    const sum = noLight();
    let lit = false;
    for (const { part, beam, diffuse } of letIn) {
      if (diffuse[hour]! > 0) addLight(sum, ends[part]!, diffuse[hour]!);
      lit ||= beam[hour]! > 0;
    }
    if (!lit) return sum;
    const [elevation, azimuth] = [sun.elevation[hour]!, sun.azimuth[hour]!];
    const lands = landing(sunDirection(elevation, azimuth, facing));
    const within = cosinesWithin(geometry, elevation, azimuth);
    for (const { part, beam } of letIn) {
      const light = beam[hour]!;
      if (light <= 0) continue;
      const shares = lands.get(part);
      // the sun of the hour's middle is behind a pane that it lit for a while: light without a way
      if (shares === undefined) addLight(sum, ends[part]!, light);
      else {
        shares.forEach((share, to) => {
          if (share > 0) {
            land(sum, surfaces[to]!, ends[to]!, share * light, () => gone(within[to]!));
          }
        });
      }
    }
    return sum;
  });
}

/** Beam on a surface: some ends there at once, the rest is thrown back. */
function land(
  sum: LightEnds,
  surface: LightSurface,
  ends: LightEnds,
  light: number,
  gone: () => number,
): void {
  const { atOnce, glazed } = surface;
  if (glazed) {
    const out = gone();
    sum.glazing += out * light;
    addLight(sum, ends, (1 - out) * light);
    return;
  }
  addLight(sum, atOnce, light);
  addLight(sum, ends, (1 - endedLight(atOnce)) * light);
}
