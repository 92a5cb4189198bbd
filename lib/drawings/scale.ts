/** Scales of sheets as the reader's rule has them, and the bar that lets the print be checked. @module */
import { feetInches, type UnitSystem } from "../units/mod.ts";
import { type PaperPoint, rectangle, SMALLEST, text } from "./svg.ts";

/** m, exactly. */
const INCH = 0.0254;
/** Metric scales, 1 to so many. */
const METRIC = [
  ...[1, 2, 5, 10, 20, 25, 50, 75, 100, 125, 150, 200, 250, 300, 400, 500],
  ...[1000, 2000, 2500, 5000, 10000],
];
/** Inches of paper for a foot, as on an architect's rule; from memory. */
const ARCHITECTS = [12, 6, 3, 3 / 2, 1, 3 / 4, 1 / 2, 3 / 8, 1 / 4, 3 / 16, 1 / 8, 3 / 32, 1 / 16];
/** Feet for an inch of paper, as on an engineer's rule; from memory. */
const ENGINEERS = [20, 30, 40, 50, 60, 100, 200, 300, 400, 500, 600, 1000];

/** What a reader of US units calls each scale, by its ratio. */
const US_SCALES: ReadonlyMap<number, string> = new Map([
  ...ARCHITECTS.map((inches) =>
    [Math.round(12 / inches), `${feetInches(inches * INCH, 32)} = 1'-0"`] as const
  ),
  ...ENGINEERS.map((feet) => [12 * feet, `1" = ${feet}'`] as const),
]);

/** Common scales, the largest first: metres of the world for a metre of paper. */
export function commonScales(units: UnitSystem): readonly number[] {
  return units === "US" ? [...US_SCALES.keys()] : METRIC;
}

/** "1:50", or `1/4" = 1'-0" (1:48)`. */
export function scaleWords(scale: number, units: UnitSystem): string {
  const words = units === "US" ? US_SCALES.get(scale) : undefined;
  return words === undefined ? `1:${scale}` : `${words} (1:${scale})`;
}

/** Room of the scale bar, mm. */
export const SCALE_BAR = 56;

/** Lengths of bars whose halves are round too, m. */
const ROUND_METRES = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500];
const ROUND_FEET = [
  ...[1, 2, 4, 6].map((inches) => inches * INCH),
  ...[1, 2, 4, 6, 10, 20, 40, 100, 200, 400, 1000, 2000].map((feet) => 12 * feet * INCH),
];

/**
 * Length of the scale bar, m: the longest round length that fits the room.
 *
 * @param scale metres of the world for a metre of paper
 * @param room mm of paper
 * @param units in which it is round
 */
export function scaleBarLength(scale: number, room: number, units: UnitSystem = "SI"): number {
  const rounds = units === "US" ? ROUND_FEET : ROUND_METRES;
  return rounds.filter((one) => one * 1000 / scale <= room).at(-1) ?? rounds[0]!;
}

/**
 * The bar with its ends, its middle, and its length in both systems.
 *
 * @param scale metres of the world for a metre of the drawing
 * @param at upper left corner on the paper, mm
 * @param units of its numbers
 */
export function scaleBar(scale: number, at: PaperPoint, units: UnitSystem): Element[] {
  const metres = scaleBarLength(scale, SCALE_BAR, units);
  const width = metres * 1000 / scale;
  const said = units === "US" ? feetInches(metres, 2) : `${metres} m`;
  const middle = units === "US" ? feetInches(metres / 2, 2) : `${metres / 2}`;
  const whole = units === "US"
    ? `bar = ${said} (${metres.toFixed(2)} m)`
    : `bar = ${said} = ${(metres / 0.3048).toFixed(2)} ft`;
  return [
    rectangle(at, { width: width / 2, height: 2 }, { fill: "#111" }),
    rectangle({ x: at.x + width / 2, y: at.y }, { width: width / 2, height: 2 }, { fill: "#fff" }),
    text({ x: at.x, y: at.y - 1.5 }, "0", { anchor: "middle" }),
    text({ x: at.x + width / 2, y: at.y - 1.5 }, middle, { anchor: "middle" }),
    text({ x: at.x + width, y: at.y - 1.5 }, said, { anchor: "middle" }),
    text({ x: at.x, y: at.y + 6.5 }, whole, { size: SMALLEST }),
  ];
}
