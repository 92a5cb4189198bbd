/** Weekly pictures of the soil across the tubes. @module */
import type { ReducedEngine } from "../solver/reduced/engine.ts";
import type { StoreSite } from "../site.ts";
import type { SoilSection } from "../types.ts";
import type { StepListener } from "../step_report.ts";

/** m beyond the house and below the lowest tube that a map shows. */
const MARGIN = 3;
const DAYS_BETWEEN = 7;

/** A listener that takes a picture each week, and the pictures so far. */
export function sectionCamera(
  site: StoreSite,
  engine: ReducedEngine,
): { readonly listen: StepListener; readonly section: () => SoilSection } {
  const { mesh } = site;
  const edge = mesh.x.reduce((most, x, k) => mesh.underFloor[k] ? Math.max(most, x) : most, 0);
  const rows: number[] = [];
  const lowest = Math.max(
    ...mesh.blocks.map((block) => mesh.depths[Math.floor(block.cells[0]! / mesh.columns)]!),
  );
  mesh.depths.forEach((depth, row) => {
    if (depth < lowest + MARGIN) rows.push(row);
  });
  const columns: number[] = [];
  mesh.x.forEach((x, column) => {
    if (Math.abs(x) < edge + MARGIN) columns.push(column);
  });
  const right = columns.map((column) => ({ column, x: mesh.x[column]! }));
  const shown = mesh.half
    ? [...right.map(({ column, x }) => ({ column, x: -x })).reverse(), ...right]
    : right;
  const days: number[] = [];
  const temperatures: Float64Array[] = [];
  const middle = Math.floor(site.slices / 2);
  const listen: StepListener = (report) => {
    const day = Math.floor(report.hour / 24);
    if (report.hour % 24 !== 0 || day % DAYS_BETWEEN !== 0 || days.at(-1) === day) return;
    days.push(day);
    const cells = engine.cells(middle);
    temperatures.push(
      Float64Array.from(
        rows.flatMap((row) => shown.map(({ column }) => cells[row * mesh.columns + column]!)),
      ),
    );
  };
  return {
    listen,
    section: () => ({
      x: shown.map(({ x }) => x),
      depths: rows.map((row) => mesh.depths[row]!),
      days,
      temperatures,
    }),
  };
}
