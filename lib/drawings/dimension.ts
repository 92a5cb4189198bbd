/**
 * Dimension lines.
 *
 * @module
 */
import { label as words, line, type PaperPoint } from "./svg.ts";

/** Metres with centimetres, such as "24.00". */
export function metres(value: number): string {
  return value.toFixed(2);
}

/** Metres and feet, such as "24.00 m (78.7 ft)". */
export function metresAndFeet(value: number): string {
  return `${metres(value)} m (${(value / 0.3048).toFixed(1)} ft)`;
}

/**
 * Horizontal dimension with extension lines from the measured points.
 *
 * @param from measured point on the left, paper mm
 * @param to measured point on the right
 * @param y height of the dimension line on the paper
 * @param label text above the line
 */
export function horizontalDimension(
  from: PaperPoint,
  to: PaperPoint,
  y: number,
  label: string,
): Element[] {
  const room = to.x - from.x;
  const thin = { "stroke-width": 0.15 };
  const beside = label.length * 1.4 > room;
  return [
    line(from, { x: from.x, y: y + Math.sign(y - from.y) }, thin),
    line(to, { x: to.x, y: y + Math.sign(y - to.y) }, thin),
    line({ x: from.x, y }, { x: to.x, y }, thin),
    tick({ x: from.x, y }),
    tick({ x: to.x, y }),
    beside
      ? words({ x: to.x + 2, y: y + 0.9 }, label)
      : words({ x: (from.x + to.x) / 2, y: y - 0.9 }, label, { anchor: "middle" }),
  ];
}

/**
 * Vertical dimension with extension lines from the measured points.
 *
 * @param from upper measured point, paper mm
 * @param to lower measured point
 * @param x position of the dimension line on the paper
 * @param label text beside the line, on the side away from the measured points
 */
export function verticalDimension(
  from: PaperPoint,
  to: PaperPoint,
  x: number,
  label: string,
): Element[] {
  const thin = { "stroke-width": 0.15 };
  const outward = x < from.x ? -1 : 1;
  return [
    line(from, { x: x + outward, y: from.y }, thin),
    line(to, { x: x + outward, y: to.y }, thin),
    line({ x, y: from.y }, { x, y: to.y }, thin),
    tick({ x, y: from.y }),
    tick({ x, y: to.y }),
    words({ x: x + outward * 1.4, y: (from.y + to.y) / 2 + 0.9 }, label, {
      anchor: outward < 0 ? "end" : "start",
    }),
  ];
}

function tick(at: PaperPoint): Element {
  return line({ x: at.x - 0.9, y: at.y + 0.9 }, { x: at.x + 0.9, y: at.y - 0.9 }, {
    "stroke-width": 0.35,
  });
}
