/** Axes of a small picture: scales, grid and words, as SVG source. @module */
import { ticks } from "d3-array";
import { showNumber } from "../../units/display_units.ts";
import { escaped } from "./text.ts";

/** px around the drawing. */
export const MARGIN = { left: 52, right: 10, top: 28, bottom: 26 } as const;

/** px below which a picture is drawn for a phone. */
export const NARROW = 500;

/** A picture's size and its scale upwards. */
export interface Frame {
  /** px */
  readonly width: number;
  /** px */
  readonly height: number;
  /** place of a value, px from the top */
  readonly y: (value: number) => number;
  /** grid, numbers and the words above them */
  readonly svg: string;
}

/**
 * Frame of a picture.
 *
 * @param width px
 * @param low smallest value shown, in the reader's unit
 * @param high largest value shown
 * @param axis words above the scale, with the unit
 */
export function frame(width: number, low: number, high: number, axis: string): Frame {
  const height = width < NARROW ? 260 : 320;
  const marks = ticks(low, high, 6);
  const step = marks.length > 1 ? marks[1]! - marks[0]! : 1;
  const least = Math.floor(low / step) * step;
  const most = Math.max(Math.ceil(high / step) * step, least + step);
  const room = height - MARGIN.top - MARGIN.bottom;
  const y = (value: number) =>
    Math.round(10 * (MARGIN.top + room * (most - value) / (most - least))) / 10;
  const grid = ticks(least, most, 6).map((mark) => {
    const decimals = Number.isInteger(step) ? 0 : 1;
    const line = mark === 0 ? "axis" : "grid";
    return `<path class="${line}" d="M${MARGIN.left},${y(mark)}H${width - MARGIN.right}"/>` +
      `<text x="${MARGIN.left - 6}" y="${y(mark) + 4}" text-anchor="end">` +
      `${showNumber(mark, decimals)}</text>`;
  });
  return {
    width,
    height,
    y,
    svg: `${grid.join("")}<text x="4" y="16">${escaped(axis)}</text>`,
  };
}

/** A picture around its frame and marks, with the words for those who cannot see it. */
export function picture({ width, height, svg }: Frame, marks: string, alt: string): string {
  return `<svg role="img" aria-label="${escaped(alt)}" width="${width}" height="${height}" ` +
    `viewBox="0 0 ${width} ${height}" xmlns="http://www.w3.org/2000/svg">` +
    `<rect width="100%" height="100%" fill="white"/>${svg}${marks}</svg>`;
}

/** Names of the months below a picture; their first letters on a phone. */
export function monthNames(
  names: readonly string[],
  { width, height }: Frame,
  place: (month: number) => number,
): string {
  return names.map((name, month) =>
    `<text x="${Math.round(place(month))}" y="${height - 8}" text-anchor="middle">` +
    `${width < NARROW ? name[0] : name}</text>`
  ).join("");
}
