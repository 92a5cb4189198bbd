/**
 * Tubes that are not empty: water standing in a sag, silt along the bottom.
 *
 * @module
 */
import type { AirProperties } from "../air/mod.ts";
import { requireInRange } from "../basics/mod.ts";
import { conduitOf, frictionFactor } from "./friction.ts";
import { reynoldsNumber } from "./film.ts";
import { crossSection } from "./pressure.ts";
import type { TubeProduct } from "./types.ts";

/** The part of a round tube above what lies in it. */
export interface FreeSection {
  /** m² */
  readonly area: number;
  /** of air against wall and filling, m */
  readonly perimeter: number;
  /** 4·area/perimeter, m */
  readonly hydraulicDiameter: number;
  /** of tube wall that the air still touches, over the whole, 0 to 1 */
  readonly wallShare: number;
}

/**
 * Section left free in a round tube filled to a depth. Exact: segment of a circle.
 *
 * @param diameter inside, m
 * @param depth of the filling at the bottom, 0 to the diameter, m
 * @returns the free section; area 0 where it is full
 */
export function freeSection(diameter: number, depth: number): FreeSection {
  requireInRange("depth of the filling", depth, 0, diameter, "m");
  const radius = diameter / 2;
  // half the angle at the centre over the free part of the wall
  const half = Math.acos(Math.max(-1, Math.min(1, (depth - radius) / radius)));
  const chord = 2 * radius * Math.sin(half);
  const area = radius ** 2 * (half - Math.sin(2 * half) / 2);
  const wall = 2 * radius * half;
  const perimeter = wall + chord;
  return {
    area,
    perimeter,
    hydraulicDiameter: perimeter > 0 ? 4 * area / perimeter : 0,
    wallShare: half / Math.PI,
  };
}

/** Filling of a tube. */
export interface Filling {
  /** at its deepest, m */
  readonly depth: number;
  /** m along the tube, taken as equally deep */
  readonly length: number;
}

/** What a filling does to a tube. */
export interface FouledTube {
  /** true where no air passes */
  readonly blocked: boolean;
  /** velocity heads of the empty tube to add to its loss; Infinity where blocked */
  readonly addedLoss: number;
  /** share of the tube's wall that still exchanges heat, 0 to 1 */
  readonly wallShare: number;
}

/** Share of the area below which a tube counts as blocked. */
const LEAST_FREE = 0.01;

/**
 * Loss that a filling adds to a tube.
 *
 * ΔK = (f·l/D_h − f·l/D·φ²)/φ² + [0.5·(1 − φ) + (1 − φ)²]/φ², φ free over whole area: friction of
 * the narrow part instead of the full one, sudden contraction and Borda–Carnot's expansion.
 *
 * Source: Darcy with hydraulic diameter; Idelchik [idelchik-1994] and Borda–Carnot for the ends.
 *
 * @param tube product and air
 * @param filling depth and length
 * @param airFlow m³/s, for the friction factor
 * @returns the effect
 */
export function fouledTube(
  tube: {
    readonly product: TubeProduct;
    readonly length: number;
    readonly air: AirProperties;
  },
  filling: Filling,
  airFlow: number,
): FouledTube {
  const { product, air } = tube;
  const diameter = product.insideDiameter;
  requireInRange("length of the filling", filling.length, 0, tube.length, "m");
  const free = freeSection(diameter, filling.depth);
  const share = free.area / crossSection(diameter);
  const wallShare = 1 - filling.length / tube.length * (1 - free.wallShare);
  if (filling.length === 0 || filling.depth === 0) {
    return { blocked: false, addedLoss: 0, wallShare: 1 };
  }
  if (share < LEAST_FREE) return { blocked: true, addedLoss: Infinity, wallShare };
  const conduit = conduitOf(product);
  const speed = airFlow / crossSection(diameter);
  const full = frictionFactor(conduit, Math.max(1, reynoldsNumber(speed, diameter, air)));
  const hydraulic = free.hydraulicDiameter;
  const narrow = frictionFactor(
    { ...conduit, diameter: hydraulic },
    Math.max(1, reynoldsNumber(speed / share, hydraulic, air)),
  );
  const friction = narrow * filling.length / hydraulic / share ** 2 -
    full * filling.length / diameter;
  const ends = (0.5 * (1 - share) + (1 - share) ** 2) / share ** 2;
  return { blocked: false, addedLoss: friction + ends, wallShare };
}

/** A sag in a tube that should fall evenly. */
export interface Sag {
  /** depth of the sag below the straight line, in its middle, m */
  readonly depth: number;
  /** m along the tube */
  readonly span: number;
  /** fall of the tube, m/m */
  readonly slope: number;
  /** inside diameter of the tube, m */
  readonly diameter: number;
}

/** Water that stands in a sag. */
export interface StandingWater extends Filling {
  /** litres */
  readonly litres: number;
  /** true where the water shuts the tube */
  readonly closed: boolean;
}

/**
 * Water that a sag holds back once it is full.
 *
 * A sag of parabolic shape on a tube of slope m keeps water of depth s·(1 − u)² over a length
 * l·(1 − u), u = m·l/(4s): none where the slope wins, u ≥ 1. Volume by summing segments of a circle.
 *
 * Source: geometry, exact for a parabola.
 *
 * @param sag depth, span, slope and diameter
 * @returns the water
 */
export function standingWater(sag: Sag): StandingWater {
  const { depth: sagDepth, span, slope, diameter } = sag;
  requireInRange("slope", slope, 0, 1, "m/m");
  const ratio = sagDepth > 0 ? slope * span / (4 * sagDepth) : Infinity;
  if (ratio >= 1) return { depth: 0, length: 0, litres: 0, closed: false };
  const level = sagDepth * (1 - ratio) ** 2;
  const length = span * (1 - ratio);
  const whole = crossSection(diameter);
  const steps = 200;
  let volume = 0;
  for (let i = 0; i < steps; i++) {
    const place = 2 * (i + 0.5) / steps - 1;
    const depth = Math.min(diameter, level * (1 - place ** 2));
    volume += (whole - freeSection(diameter, depth).area) * length / steps;
  }
  return {
    depth: Math.min(level, diameter),
    length,
    litres: 1000 * volume,
    closed: level >= diameter,
  };
}
