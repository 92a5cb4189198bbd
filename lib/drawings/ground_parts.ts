/**
 * What both sections show of the ground: floor, footings with their 45° lines, edge insulation.
 *
 * @module
 */
import { allowance } from "../tubes/mod.ts";
import type { DrawingInputs } from "./inputs.ts";
import type { Sheet } from "./sheet.ts";
import { line, polyline, rectangle } from "./svg.ts";

/** Colours that mean the same on every sheet. */
export const COLOURS = {
  tube: { fill: "#cfe6ee", stroke: "#1f6f8b" },
  header: { fill: "#f7e3c8", stroke: "#8a4b08" },
  pit: "#f4efe6",
  limit: "#b00020",
} as const;

/** m of wall drawn above the floor */
export const WALL_ABOVE = 0.5;

const BOARD = 0.08;

/** Floor line and both footings of a house of the given width, with the 45° lines down to a depth. */
export function groundParts(
  sheet: Sheet,
  inputs: DrawingInputs,
  given: { readonly half: number; readonly lowest: number; readonly beyond: number },
): Element[] {
  const { half, lowest, beyond } = given;
  const { footingDepth } = inputs.house;
  const depth = footingDepth ?? 0;
  const wall = allowance("footing width");
  const floor = line(sheet.place(-half - beyond, 0), sheet.place(half + beyond, 0), {
    "stroke-width": 0.5,
  });
  return [
    floor,
    ...[-1, 1].flatMap((side) => {
      const outer = side < 0 ? -half : half - wall;
      const inner = side * (half - wall);
      const reach = Math.max(0, Math.min(lowest - depth, half - wall));
      const insulation = inputs.house.edgeInsulation > 0 ? inputs.house.edgeInsulationDepth : 0;
      return [
        rectangle(sheet.place(outer, -WALL_ABOVE), {
          width: sheet.length(wall),
          height: sheet.length(WALL_ABOVE + depth),
        }, { fill: "#ddd" }),
        ...footingDepth !== null && reach > 0
          ? [
            polyline(
              [sheet.place(inner, depth), sheet.place(inner - side * reach, depth + reach)],
              {
                stroke: COLOURS.limit,
                "stroke-dasharray": "2 1.2",
              },
            ),
          ]
          : [],
        ...insulation > 0
          ? [rectangle(sheet.place(side < 0 ? -half - BOARD : half, 0), {
            width: sheet.length(BOARD),
            height: sheet.length(insulation),
          }, { fill: "#f6c1d0", "stroke-width": 0.2 })]
          : [],
      ];
    }),
  ];
}
