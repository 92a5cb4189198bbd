/** Where the beam that comes in through a pane falls: the outlines seen along the sun's rays. @module */
import { DEGREE } from "../../basics/mod.ts";
import type { Corner, Outline } from "./outline.ts";

/** Unit vector towards the sun in the house's own directions: along, back, up. */
export type SunDirection = readonly [along: number, back: number, up: number];

/** Corners on a screen across the rays: x, y, x, y … */
type Shadow = Float64Array;

/**
 * Direction of the sun seen from the house.
 *
 * @param elevation degrees
 * @param azimuth degrees clockwise from north
 * @param facing degrees, azimuth the front faces
 */
export function sunDirection(elevation: number, azimuth: number, facing: number): SunDirection {
  const turn = (azimuth - facing) * DEGREE;
  const level = Math.cos(elevation * DEGREE);
  return [level * Math.sin(turn), -level * Math.cos(turn), Math.sin(elevation * DEGREE)];
}

/** Corners as plain numbers: along, back, up, along … */
function flat(outline: Outline): Float64Array {
  return Float64Array.from(outline.flat());
}

/** Casts corners on a screen across the rays. */
function cast(corners: Float64Array, sun: SunDirection, shadow: Shadow): void {
  const along = sun[0];
  const back = sun[1];
  const up = sun[2];
  const level = Math.hypot(along, back);
  // straight overhead any pair of level directions will do
  const overhead = level < 1e-9;
  const rightAlong = overhead ? 1 : -back / level;
  const rightBack = overhead ? 0 : along / level;
  const upAlong = overhead ? 0 : -up * along / level;
  const upBack = overhead ? -1 : -up * back / level;
  for (let from = 0, to = 0; from < corners.length; from += 3, to += 2) {
    shadow[to] = corners[from]! * rightAlong + corners[from + 1]! * rightBack;
    shadow[to + 1] = corners[from]! * upAlong + corners[from + 1]! * upBack +
      corners[from + 2]! * level;
  }
}

/** Twice the signed area of a shadow of so many numbers. */
function twiceArea(shadow: Shadow, numbers: number): number {
  let twice = 0;
  let before = numbers - 2;
  for (let i = 0; i < numbers; i += 2) {
    twice += shadow[before]! * shadow[i + 1]! - shadow[i]! * shadow[before + 1]!;
    before = i;
  }
  return twice;
}

const MOST_NUMBERS = 80;
const SPARE = new Float64Array(MOST_NUMBERS);
const OTHER_SPARE = new Float64Array(MOST_NUMBERS);

/** Keeps of a shadow what lies to the left of an edge (right where sign is −1). */
function cutByEdge(
  from: Shadow,
  numbers: number,
  to: Shadow,
  clip: Shadow,
  edge: number,
  sign: number,
): number {
  const next = edge + 2 < clip.length ? edge + 2 : 0;
  const x = clip[edge]!;
  const y = clip[edge + 1]!;
  const dx = sign * (clip[next]! - x);
  const dy = sign * (clip[next + 1]! - y);
  let kept = 0;
  let lastX = from[numbers - 2]!;
  let lastY = from[numbers - 1]!;
  let last = dx * (lastY - y) - dy * (lastX - x);
  for (let i = 0; i < numbers; i += 2) {
    const hereX = from[i]!;
    const hereY = from[i + 1]!;
    const here = dx * (hereY - y) - dy * (hereX - x);
    if ((last > 0 && here < 0) || (last < 0 && here > 0)) {
      const way = last / (last - here);
      to[kept++] = lastX + way * (hereX - lastX);
      to[kept++] = lastY + way * (hereY - lastY);
    }
    if (here >= 0) {
      to[kept++] = hereX;
      to[kept++] = hereY;
    }
    lastX = hereX;
    lastY = hereY;
    last = here;
  }
  return kept;
}

/** Area that two convex shadows share (Sutherland & Hodgman's cut, edge by edge). */
function sharedArea(subject: Shadow, clip: Shadow): number {
  const sign = Math.sign(twiceArea(clip, clip.length));
  if (sign === 0) return 0;
  let from: Shadow = subject;
  let to: Shadow = SPARE;
  let numbers = subject.length;
  for (let edge = 0; edge < clip.length && numbers > 4; edge += 2) {
    numbers = cutByEdge(from, numbers, to, clip, edge, sign);
    from = to;
    to = to === SPARE ? OTHER_SPARE : SPARE;
  }
  return numbers > 4 ? Math.abs(twiceArea(from, numbers)) / 2 : 0;
}

/** Surfaces of a closed convex room: every ray that comes in through one ends on another. */
export interface RoomSurface {
  /** corners, m */
  readonly outline: Outline;
  /** lets light through or not */
  readonly glazed: boolean;
}

/** Unit vector across an outline, pointing in or out by the turn of its corners. */
function across(outline: Outline): Corner {
  let [along, back, up] = [0, 0, 0];
  outline.forEach((a, i) => {
    const b = outline[(i + 1) % outline.length]!;
    along += (a[1] - b[1]) * (a[2] + b[2]);
    back += (a[2] - b[2]) * (a[0] + b[0]);
    up += (a[0] - b[0]) * (a[1] + b[1]);
  });
  const length = Math.hypot(along, back, up) || 1;
  return [along / length, back / length, up / length];
}

/** Middle of the corners, m. */
export function middle(outline: Outline): Corner {
  const sum = (at: 0 | 1 | 2) => outline.reduce((total, corner) => total + corner[at], 0);
  const count = Math.max(1, outline.length);
  return [sum(0) / count, sum(1) / count, sum(2) / count];
}

/**
 * Unit vector across a surface into the room.
 *
 * @param outline corners of the surface, m
 * @param inside a point of the room, m
 */
export function inward(outline: Outline, inside: Corner): Corner {
  const normal = across(outline);
  const at = middle(outline);
  const towards = normal[0] * (inside[0] - at[0]) + normal[1] * (inside[1] - at[1]) +
    normal[2] * (inside[2] - at[2]);
  return towards >= 0 ? normal : [-normal[0], -normal[1], -normal[2]];
}

/** A point inside a convex room: the middle of the middles of its surfaces, m. */
export function roomMiddle(surfaces: readonly RoomSurface[]): Corner {
  return middle(
    surfaces.filter(({ outline }) => outline.length > 2).map(({ outline }) => middle(outline)),
  );
}

/** Shares of the beam through one surface that fall on each; they add up to 1. */
export type Landing = ReadonlyMap<number, Float64Array>;

/** Smallest cosine at which a surface counts as in the sun. */
const GRAZING = 1e-6;

/** Finds where the beam lands in a room, sun by sun. */
export type BeamLanding = (sun: SunDirection) => Landing;

/**
 * Where the beam through each glazed surface of a closed convex room falls.
 *
 * Seen along the rays, the surfaces in front cover the same outline as those behind; what the
 * shadows of a pane and of a surface behind have in common is the part of the pane's beam that falls
 * there.
 *
 * @param surfaces of the room, floor included
 * @returns for a direction of the sun, the shares of each sunlit pane, in the order of the surfaces
 */
export function beamLanding(surfaces: readonly RoomSurface[]): BeamLanding {
  const inside = roomMiddle(surfaces);
  const normals = surfaces.map(({ outline }) => inward(outline, inside));
  const whole = surfaces.map(({ outline }) => outline.length > 2);
  const corners = surfaces.map(({ outline }) => flat(outline));
  const shadows = surfaces.map(({ outline }) => new Float64Array(2 * outline.length));
  return (sun) => {
    const facing = normals.map((normal) =>
      -(normal[0] * sun[0] + normal[1] * sun[1] + normal[2] * sun[2])
    );
    for (let i = 0; i < surfaces.length; i++) cast(corners[i]!, sun, shadows[i]!);
    const landing = new Map<number, Float64Array>();
    surfaces.forEach(({ glazed }, from) => {
      if (!glazed || !whole[from] || facing[from]! <= GRAZING) return;
      const shares = new Float64Array(surfaces.length);
      let all = 0;
      for (let to = 0; to < surfaces.length; to++) {
        if (!whole[to] || facing[to]! >= -GRAZING) continue;
        all += shares[to] = sharedArea(shadows[from]!, shadows[to]!);
      }
      if (all <= 0) return;
      for (let to = 0; to < shares.length; to++) shares[to] = shares[to]! / all;
      landing.set(from, shares);
    });
    return landing;
  };
}
