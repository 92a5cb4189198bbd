/** Tables that help to choose a tube field. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { shown } from "../kit/reader.ts";
import type { Study } from "../../study/mod.ts";
import type { FieldSearch } from "../../store/mod.ts";
import type { FouledRow, MaterialRow } from "../../tubes/mod.ts";
import { table } from "../kit/table.ts";

/** The table of tubes at the study's flow and length. */
export function materialTable(rows: readonly MaterialRow[]): DisplayItem {
  return table(rows, [
    { head: "tube", value: (row) => row.product.id.replaceAll("-", " "), right: false },
    {
      head: "inside",
      value: (row) => row.product.insideDiameter,
      kind: "smallLength",
      us: false,
    },
    {
      head: "wall",
      value: (row) =>
        row.product.manning === null
          ? `ε ${(1000 * row.product.roughness!).toPrecision(2)} mm`
          : `n ${row.product.manning}`,
      right: true,
    },
    { head: "friction", value: (row) => row.friction, digits: 4 },
    { head: "friction, smooth", value: (row) => row.smoothFriction, digits: 4 },
    { head: "pressure", value: (row) => row.pressureDrop, kind: "pressure", us: false },
    { head: "film", value: (row) => row.film, kind: "transmittance", us: false },
    { head: "film coefficient if ribs helped", value: (row) => row.wrongFilm, digits: 2 },
    { head: "effective", value: (row) => row.effectiveness, kind: "share" },
  ], "Every tube in the list at this study's flow and length per tube");
}

/** A few fields of the front: cheapest, most heat, least electricity, and most heat for the money. */
export function searchTable(search: FieldSearch): DisplayItem {
  return table(
    search.picks,
    [
      { head: "", value: (row) => row.why },
      { head: "tube", value: (row) => row.field.tube.replaceAll("-", " ") },
      { head: "number", value: (row) => row.field.count, kind: "count" },
      { head: "length", value: (row) => row.field.length, kind: "length", us: false },
      { head: "spacing", value: (row) => row.field.spacing, kind: "depth", us: false },
      { head: "layers", value: (row) => row.field.layers, kind: "count" },
      { head: "depth", value: (row) => row.field.depth, kind: "depth", us: false },
      { head: "heat a day", value: (row) => row.field.heat, kind: "energy", digits: 1, us: false },
      { head: "fan a day", value: (row) => row.field.fanEnergy, kind: "electricity", digits: 2 },
      { head: "cost", value: (row) => row.field.cost, digits: 0 },
    ],
    `${search.front.length} of ${search.allowed} allowed designs are unbeaten`,
  );
}

/** What silt or water in one tube does. */
export function fouledTable(rows: readonly FouledRow[], study: Study): DisplayItem {
  return table(
    rows,
    [
      { head: "in the tube", value: (row) => row.name },
      { head: "deepest", value: (row) => row.filling.depth, kind: "smallLength" },
      { head: "litres of water", value: (row) => row.litres, digits: 1 },
      { head: "air flow of this tube", value: (row) => row.flow, kind: "share" },
      { head: "heat of this tube", value: (row) => row.heat, kind: "share" },
    ],
    `One bad tube at a fall of ${shown(study.tubes.slope, "sharePrecise")}, with the others clean`,
  );
}
