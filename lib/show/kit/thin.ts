/** Fewer points, same look. @module */

/** A point of a line. */
export interface Point {
  /** along the axis */
  readonly x: number;
  /** value; NaN breaks the line */
  readonly y: number;
}

/**
 * Thins a line to at most `limit` points: the line is cut into equal parts, and of each part the
 * lowest and the highest point stay, in their order. Extremes, first and last point survive.
 *
 * @param points in rising x
 * @param limit most points to return, at least 4
 */
export function thin<P extends Point>(points: readonly P[], limit = 2000): P[] {
  if (points.length <= limit) return [...points];
  const parts = Math.floor((limit - 2) / 2);
  const kept: P[] = [points[0]!];
  for (let part = 0; part < parts; part++) {
    const from = Math.max(1, Math.floor((part * points.length) / parts));
    const to = Math.min(points.length - 1, Math.floor(((part + 1) * points.length) / parts));
    kept.push(...extremes(points, from, to));
  }
  kept.push(points[points.length - 1]!);
  return kept;
}

/** Lowest and highest of points[from, to), in their order; one point when they are the same. */
function extremes<P extends Point>(points: readonly P[], from: number, to: number): P[] {
  if (to <= from) return [];
  let low = from;
  let high = from;
  for (let index = from; index < to; index++) {
    if (!(points[index]!.y >= points[low]!.y)) low = index;
    if (!(points[index]!.y <= points[high]!.y)) high = index;
  }
  if (low === high) return [points[low]!];
  return low < high ? [points[low]!, points[high]!] : [points[high]!, points[low]!];
}

/** An hourly series as points; x is the hour. */
export function hourlyPoints(series: ArrayLike<number>, from = 0, to = series.length): Point[] {
  const points: Point[] = [];
  for (let hour = from; hour < to; hour++) points.push({ x: hour, y: series[hour]! });
  return points;
}
