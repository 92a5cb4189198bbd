/**
 * Dimension lines.
 *
 * @module
 */
import { feetInches, type UnitSystem } from "../units/mod.ts";
import { label as words, line, type PaperPoint } from "./svg.ts";

/** How lengths, m, are written on a sheet. */
export interface LengthWords {
  /** what the title block says of lengths without a unit */
  readonly unit: string;
  /** at a dimension line, such as "24.00" */
  readonly short: (metres: number) => string;
  /** in a sentence, such as "24.00 m" */
  readonly plain: (metres: number) => string;
  /** in both systems, such as "24.00 m (78.7 ft)" */
  readonly both: (metres: number) => string;
  /** of pipes and holes, such as "0.315 m" */
  readonly fine: (metres: number) => string;
  /** the same at a dimension line: "0.315" */
  readonly fineShort: (metres: number) => string;
  /** of walls and arcs, such as "40 mm" */
  readonly small: (metres: number) => string;
}

const IN_METRES: LengthWords = {
  unit: "lengths in m",
  short: (metres) => metres.toFixed(2),
  plain: (metres) => `${metres.toFixed(2)} m`,
  both: (metres) => `${metres.toFixed(2)} m (${(metres / 0.3048).toFixed(1)} ft)`,
  fine: (metres) => `${metres.toFixed(3)} m`,
  fineShort: (metres) => metres.toFixed(3),
  small: (metres) => `${(1000 * metres).toFixed(0)} mm`,
};

/** To half an inch in the ground, to an eighth at pipes and to a sixteenth at holes. */
const IN_FEET: LengthWords = {
  unit: "lengths in feet and inches",
  short: (metres) => feetInches(metres, 2),
  plain: (metres) => feetInches(metres, 2),
  both: (metres) => `${feetInches(metres, 2)} (${metres.toFixed(2)} m)`,
  fine: (metres) => feetInches(metres, 16),
  fineShort: (metres) => feetInches(metres, 16),
  small: (metres) => feetInches(metres, 16),
};

/** How lengths are written for a reader. */
export function lengthWords(units: UnitSystem): LengthWords {
  return units === "US" ? IN_FEET : IN_METRES;
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
