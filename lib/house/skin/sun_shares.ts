/** Hour by hour, where the light that comes in through the glazing ends. @module */
import { glazingShares, type HourlySun } from "../../sun/mod.ts";
import { DEGREE } from "../../basics/mod.ts";
import type { GlazingOptics } from "../../sun/mod.ts";
import type { HouseGeometry, SkinPart } from "../types.ts";
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

/**
 * A function of incidence, degrees, looked up by its cosine.
 *
 * @param of incidence, 0 to 90 degrees
 * @returns the same by cosine, straight between 500 steps
 */
export function byCosine(of: (incidence: number) => number): (cosine: number) => number {
  const steps = 500;
  const values = Float64Array.from(
    { length: steps + 1 },
    (_, i) => of(Math.acos(i / steps) / DEGREE),
  );
  return (cosine) => {
    const at = Math.min(steps - 1e-9, Math.max(0, cosine * steps));
    const low = Math.floor(at);
    return values[low]! + (at - low) * (values[low + 1]! - values[low]!);
  };
}

/** Cosine between the sun and the outward normal of a part; negative behind its plane. */
export function sunCosine(part: SkinPart, sun: HourlySun, hour: number): number {
  const elevation = sun.elevation[hour]! * DEGREE;
  const turn = (sun.azimuth[hour]! - part.plane.azimuth) * DEGREE;
  const tilt = part.plane.tilt * DEGREE;
  return Math.sin(elevation) * Math.cos(tilt) +
    Math.cos(elevation) * Math.sin(tilt) * Math.cos(turn);
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
  // share of a beam that the glazing lets through or absorbs from within
  const gone = byCosine((incidence) =>
    lightFactor * (1 - glazingShares(optics, incidence).reflected)
  );
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
    for (const { part, beam } of letIn) {
      const light = beam[hour]!;
      if (light <= 0) continue;
      const shares = lands.get(part);
      // the sun of the hour's middle is behind a pane that it lit for a while: light without a way
      if (shares === undefined) addLight(sum, ends[part]!, light);
      else {
        shares.forEach((share, to) => {
          if (share > 0) {
            land(
              sum,
              surfaces[to]!,
              ends[to]!,
              share * light,
              () => gone(-sunCosine(geometry.parts[to]!, sun, hour)),
            );
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
