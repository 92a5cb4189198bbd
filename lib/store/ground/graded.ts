/** Cell sizes that grow away from what must be resolved. @module */

/** How cells may grow along one axis. */
export interface Growth {
  /** size of a cell over that of its finer neighbour, 1 to 2 */
  readonly ratio: number;
  /** largest cell, m */
  readonly largest: number;
  /** cells smaller than this, m, grow by the smaller ratio */
  readonly fine?: { readonly ratio: number; readonly below: number } | undefined;
}

/** Size of the next cell. */
function grown(size: number, growth: Growth): number {
  const { ratio, largest, fine } = growth;
  if (fine === undefined || size >= fine.below) return Math.min(size * ratio, largest);
  return Math.min(size * fine.ratio, largest);
}

/**
 * Fills a gap with cells that start small at both ends (or one) and grow by a ratio towards the
 * middle, scaled so that they fill the gap exactly.
 *
 * @param gap m
 * @param first size wanted at the near end, m
 * @param last size wanted at the far end, m; Infinity lets the cells grow all the way
 * @param growth ratio and largest cell
 * @returns cell sizes from near to far, m
 */
export function fillGap(gap: number, first: number, last: number, growth: Growth): number[] {
  const near: number[] = [];
  const far: number[] = [];
  let nearSize = Math.min(first, growth.largest);
  let farSize = Math.min(last, growth.largest);
  let total = 0;
  while (total < gap * (1 - 1e-9)) {
    if (nearSize <= farSize || !Number.isFinite(last)) {
      near.push(nearSize);
      total += nearSize;
      nearSize = grown(nearSize, growth);
    } else {
      far.unshift(farSize);
      total += farSize;
      farSize = grown(farSize, growth);
    }
  }
  const scale = gap / total;
  return [...near, ...far].map((size) => size * scale);
}

/** A stretch of the axis that must be cut into equal cells, such as a tube's block. */
export interface FixedStretch {
  /** m */
  readonly from: number;
  readonly to: number;
  /** equal cells in it */
  readonly cells: number;
}

/** What one axis of the mesh must respect. */
export interface AxisPlan {
  /** m, ends of the axis */
  readonly from: number;
  readonly to: number;
  /** stretches of equal cells; where they overlap, each keeps its ends and the cells differ */
  readonly stretches: readonly FixedStretch[];
  /** m, places where a face must lie (edge of the house, foot of a board) and the cell size there */
  readonly lines: readonly { readonly at: number; readonly size: number }[];
  readonly growth: Growth;
}

interface Stop {
  readonly from: number;
  readonly to: number;
  readonly cells: number;
  readonly size: number;
}

/** Part of a stretch up to which its overlap with the next is rounding. */
const TOUCHING = 1e-6;

/** Stretches that overlap, cut at all their ends into pieces of cells no larger than theirs. */
function withoutOverlap(stretches: readonly FixedStretch[]): FixedStretch[] {
  const pieces: FixedStretch[] = [];
  const rising = stretches.toSorted((a, b) => a.from - b.from);
  for (let first = 0; first < rising.length;) {
    const group = [rising[first]!];
    let end = group[0]!.to;
    while (first + group.length < rising.length) {
      const next = rising[first + group.length]!;
      if (next.from > end - TOUCHING * (next.to - next.from)) break;
      group.push(next);
      end = Math.max(end, next.to);
    }
    pieces.push(...(group.length === 1 ? group : cutAtEnds(group)));
    first += group.length;
  }
  return pieces;
}

function cutAtEnds(group: readonly FixedStretch[]): FixedStretch[] {
  const size = Math.min(...group.map(({ from, to, cells }) => (to - from) / cells));
  const ends = group.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b)
    .filter((end, place, all) => place === 0 || end - all[place - 1]! > TOUCHING * size);
  return ends.slice(1).map((to, place) => {
    const from = ends[place]!;
    return { from, to, cells: Math.max(1, Math.ceil((to - from) / size - TOUCHING)) };
  });
}

/** Stretches and lines in rising order; lines inside or touching a stretch are left to it. */
function stopsOf(plan: AxisPlan): Stop[] {
  const stops: Stop[] = withoutOverlap(plan.stretches).map((stretch) => ({
    ...stretch,
    size: (stretch.to - stretch.from) / stretch.cells,
  }));
  for (const line of plan.lines) {
    const taken = stops.some((stop) => line.at > stop.from - 0.005 && line.at < stop.to + 0.005);
    if (!taken && line.at >= plan.from && line.at <= plan.to) {
      stops.push({ from: line.at, to: line.at, cells: 0, size: line.size });
    }
  }
  stops.sort((a, b) => a.from - b.from);
  return stops;
}

/**
 * Cuts an axis into cells.
 *
 * @param plan ends, stretches of equal cells, lines to keep
 * @returns cell sizes in rising order, m
 */
export function cutAxis(plan: AxisPlan): number[] {
  const sizes: number[] = [];
  let position = plan.from;
  let size = Infinity;
  for (const stop of stopsOf(plan)) {
    const gap = stop.from - position;
    if (gap > 1e-9) sizes.push(...between(gap, size, stop.size, plan.growth));
    const equal = (stop.to - stop.from) / Math.max(1, stop.cells);
    for (let i = 0; i < stop.cells; i++) sizes.push(equal);
    position = stop.to;
    size = stop.size;
  }
  const rest = plan.to - position;
  if (rest > 1e-9) sizes.push(...between(rest, size, Infinity, plan.growth));
  return sizes;
}

/** Cells of a gap between two stops; an infinite size means a free end. */
function between(gap: number, near: number, far: number, growth: Growth): number[] {
  if (!Number.isFinite(near) && !Number.isFinite(far)) {
    return fillGap(gap, growth.largest, growth.largest, growth);
  }
  if (!Number.isFinite(near)) return fillGap(gap, far, Infinity, growth).reverse();
  return fillGap(gap, near, far, growth);
}
