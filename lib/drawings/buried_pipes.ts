/** Tubes and headers seen from the side, with the bends between them. @module */
import type { FieldGeometry, HeaderRow } from "../headers/mod.ts";
import type { DrawingInputs } from "./inputs.ts";
import { COLOURS } from "./ground_parts.ts";
import type { Sheet } from "./sheet.ts";
import { circle, type PaperPoint, pipeRun } from "./svg.ts";

/**
 * Every layer with its fall and its headers.
 *
 * @param sheet sheet to draw on
 * @param field the field
 * @param given study data, and the metres left out in the middle
 */
export function buriedPipes(
  sheet: Sheet,
  field: FieldGeometry,
  given: { readonly inputs: DrawingInputs; readonly cut: number },
): Element[] {
  const { place } = sheet;
  const half = field.length / 2;
  const drop = field.fall / 2;
  const { diameter, returnDiameter } = given.inputs.headersInputs;
  const width = sheet.length(2 * field.radius);
  return [
    ...field.levels.flatMap((level) =>
      level.rows.flatMap((row) =>
        tubeRuns(sheet, field, { row, centre: level.depth, cut: given.cut })
          .flatMap((points) => pipeRun(points, width, COLOURS.tube))
      )
    ),
    ...field.levels.flatMap(({ depth }) => [
      circle(place(-half, depth - drop), sheet.length(diameter / 2), COLOURS.header),
      circle(place(half, depth + drop), sheet.length(returnDiameter / 2), COLOURS.header),
    ]),
  ];
}

/** One layer from header to header, in two pieces where the middle is left out. */
function tubeRuns(
  sheet: Sheet,
  field: FieldGeometry,
  layer: { readonly row: HeaderRow; readonly centre: number; readonly cut: number },
): PaperPoint[][] {
  const { row, centre, cut } = layer;
  const half = field.length / 2;
  const fall = (x: number): number => field.fall * x / field.length;
  const end = (side: -1 | 1): PaperPoint[] => {
    const x = side * (half - row.run);
    const bend = sheet.place(x, row.depth + fall(x));
    return row.bend === 0 ? [bend] : [sheet.place(side * half, centre + fall(side * half)), bend];
  };
  const supply = end(-1);
  const back = end(1).reverse();
  if (cut === 0) return [[...supply, ...back]];
  return [
    [...supply, sheet.place(-cut / 2, row.depth + fall(-cut / 2))],
    [sheet.place(cut / 2, row.depth + fall(cut / 2)), ...back],
  ];
}
