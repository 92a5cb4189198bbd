/** What becomes of light inside the house: absorbed by floor and walls, or out again. @module */
import { Matrix, solve } from "ml-matrix";
import { DEGREE } from "../../basics/mod.ts";
import { diffuseTransmittance, type GlazingOptics, glazingShares } from "../../sun/mod.ts";
import type { HouseGeometry } from "../types.ts";
import type { RoomSurface } from "./beam_landing.ts";
import { viewFactors } from "./view_factors.ts";

/** Absorptance of soil and leaves for the light that comes in (from memory: soil 0.8, leaves 0.75). */
export const FLOOR_ABSORPTANCE = 0.75;
/** m² K/W, inside, by the way the heat flows. ISO 6946 [iso-6946-2017]. */
const WALL_FILM_RESISTANCE = 0.13;
const ROOF_FILM_RESISTANCE = 0.17;
/** W/(m² K) of radiation in those resistances: what is left of them is convection. */
const FILM_RADIATION = 5.1;
/** degrees from level above which a surface counts as a wall. ISO 6946 [iso-6946-2017]. */
const WALL_TILT = 60;

/** Ends of light inside, shares of what was sent out or of what fell on a surface. */
export interface LightEnds {
  /** absorbed at the floor, by crop, soil and what stands on it */
  floor: number;
  /** absorbed by the back wall, its heat to the house */
  backWall: number;
  /** absorbed by other solid walls and roofs, their heat to the house */
  otherSolid: number;
  /** of the last two, given to the air that rises along walls and under the roof */
  rising: number;
  /** out again through and into the glazing */
  glazing: number;
  /** absorbed by solid walls and roofs, the heat that goes outwards */
  throughSolid: number;
}

/** One surface of the house with what it does with light. */
export interface LightSurface extends RoomSurface {
  /** what becomes at once of diffuse light that falls on it; the rest is thrown back */
  readonly atOnce: LightEnds;
}

/** Nothing anywhere. */
export function noLight(): LightEnds {
  return { floor: 0, backWall: 0, otherSolid: 0, rising: 0, glazing: 0, throughSolid: 0 };
}

/** Adds a share of one set of ends to another. */
export function addLight(sum: LightEnds, ends: LightEnds, times: number): void {
  sum.floor += times * ends.floor;
  sum.backWall += times * ends.backWall;
  sum.otherSolid += times * ends.otherSolid;
  sum.rising += times * ends.rising;
  sum.glazing += times * ends.glazing;
  sum.throughSolid += times * ends.throughSolid;
}

/** What of light is not thrown back into the room: absorbed or out. */
export function endedLight(ends: LightEnds): number {
  return ends.floor + ends.backWall + ends.otherSolid + ends.glazing + ends.throughSolid;
}

/** Share of diffuse light that a glazing lets through or absorbs, bars and dirt taken off. */
function diffuseGone(optics: GlazingOptics, lightFactor: number): number {
  const steps = 90;
  let [absorbed, all] = [0, 0];
  for (let step = 0; step < steps; step++) {
    const angle = (step + 0.5) * 90 / steps;
    const weight = Math.sin(2 * angle * DEGREE);
    absorbed += weight * glazingShares(optics, angle).absorbed;
    all += weight;
  }
  return lightFactor * (diffuseTransmittance(optics) + absorbed / all);
}

/** What a solid wall or roof does with the light on it. */
function solidEnds(
  part: HouseGeometry["parts"][number],
  absorptance: number,
): LightEnds {
  const upright = part.plane.tilt > WALL_TILT;
  const resistance = upright ? WALL_FILM_RESISTANCE : ROOF_FILM_RESISTANCE;
  const outwards = Math.min(1, part.transmittanceHeat * resistance);
  const kept = absorptance * (1 - outwards);
  const isBackWall = part.side === "back" && part.element === "wall";
  return {
    ...noLight(),
    [isBackWall ? "backWall" : "otherSolid"]: kept,
    rising: kept * (1 - FILM_RADIATION * resistance),
    throughSolid: absorptance * outwards,
  };
}

/**
 * Surfaces of the house in the order of its parts, the floor last.
 *
 * @param geometry of the house
 * @param optics of the glazing
 * @param lightFactor share of the light left by bars, dirt and drops
 * @param wallAbsorptance of solid walls and roofs inside, 0 to 1
 */
export function lightSurfaces(
  geometry: HouseGeometry,
  optics: GlazingOptics,
  lightFactor: number,
  wallAbsorptance: number,
): LightSurface[] {
  const glazing = { ...noLight(), glazing: diffuseGone(optics, lightFactor) };
  const surfaces = geometry.parts.map((part): LightSurface => ({
    outline: part.outline,
    glazed: part.kind === "glazed",
    atOnce: part.kind === "glazed" ? glazing : solidEnds(part, wallAbsorptance),
  }));
  const floor = { ...noLight(), floor: FLOOR_ABSORPTANCE };
  return [...surfaces, { outline: geometry.floorOutline, glazed: false, atOnce: floor }];
}

/**
 * Where diffuse light ends that each surface sends out, after all the ways it is thrown back:
 * E_i = Σ_j F_ij·(a_j + ρ_j·E_j), ρ_j = 1 − Σ a_j, solved for all surfaces at once.
 *
 * Source: radiosity of diffuse surfaces; Incropera & DeWitt 2002 [incropera-dewitt-2002] §13.2 (from
 * memory).
 *
 * @param surfaces of the room
 * @returns for each surface, shares of the light it sends out; absorbed and out add up to 1
 */
export function diffuseEnds(surfaces: readonly LightSurface[]): LightEnds[] {
  const factors = viewFactors(surfaces);
  const keys = Object.keys(noLight()) as (keyof LightEnds)[];
  const rows = new Matrix(factors.map((row) => [...row]));
  const thrown = surfaces.map(({ atOnce }) => 1 - endedLight(atOnce));
  const left = Matrix.eye(surfaces.length);
  for (let i = 0; i < surfaces.length; i++) {
    for (let j = 0; j < surfaces.length; j++) {
      left.set(i, j, left.get(i, j) - factors[i]![j]! * thrown[j]!);
    }
  }
  const ended = rows.mmul(new Matrix(surfaces.map(({ atOnce }) => keys.map((key) => atOnce[key]))));
  const solved = solve(left, ended);
  return surfaces.map((_, i) =>
    Object.fromEntries(keys.map((key, k) => [key, solved.get(i, k)])) as unknown as LightEnds
  );
}
