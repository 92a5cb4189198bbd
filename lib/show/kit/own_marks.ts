/** The reader's own study among others in a picture. @module */
import * as Plot from "@observablehq/plot";
import { PALETTE } from "./palette.ts";

/** A star with its words at each row of the study itself. */
export function ownMarks<Row>(
  own: readonly Row[],
  place: Pick<Plot.DotOptions, "x" | "y">,
): Plot.Markish[] {
  return [
    Plot.dot(own, { ...place, symbol: "star", fill: PALETTE.ink, r: 8 }),
    Plot.text(own, {
      ...place,
      text: () => "this study",
      textAnchor: "start",
      dx: 10,
      dy: -8,
      fill: PALETTE.ink,
      stroke: "white",
      strokeWidth: 4,
    }),
  ];
}
