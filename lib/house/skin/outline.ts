/** Corners of floor, walls and roof, so that light and shade can be drawn from them. @module */

/**
 * A point of the house, m: to the left along the ridge as seen from outside the front, from the front wall
 * to the back, and up from the floor.
 */
export type Corner = readonly [along: number, back: number, up: number];

/** Corners of a flat convex surface in order round it. */
export type Outline = readonly Corner[];

/** A point of the cross-section, m: from the front wall to the back, and up from the floor. */
export type ProfilePoint = readonly [back: number, up: number];

/**
 * Rectangle between two points of the cross-section over the whole length of the house.
 *
 * @param from one edge, m
 * @param to the other edge, m
 * @param length of the house, m
 */
export function strip(from: ProfilePoint, to: ProfilePoint, length: number): Outline {
  return [[0, ...from], [length, ...from], [length, ...to], [0, ...to]];
}

/**
 * The part of an end wall's outline between two heights.
 *
 * @param profile corners of the cross-section in order round it, m
 * @param along m, where the end wall stands
 * @param low m above the floor
 * @param high m above the floor
 */
export function endOutline(
  profile: readonly ProfilePoint[],
  along: number,
  low: number,
  high: number,
): Outline {
  const above = cutAt(profile, low, 1);
  return cutAt(above, high, -1).map(([back, up]) => [along, back, up] as const);
}

/** Keeps what lies above (side 1) or below (side −1) a height. */
function cutAt(points: readonly ProfilePoint[], height: number, side: 1 | -1): ProfilePoint[] {
  const kept: ProfilePoint[] = [];
  points.forEach((point, i) => {
    const next = points[(i + 1) % points.length]!;
    const [here, there] = [side * (point[1] - height), side * (next[1] - height)];
    if (here >= 0) kept.push(point);
    if (here * there < 0) {
      const way = here / (here - there);
      kept.push([point[0] + way * (next[0] - point[0]), height]);
    }
  });
  return kept;
}
