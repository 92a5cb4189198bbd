/** Tables that help to choose and to build headers. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { LAYOUT_NAMES } from "./layout_names.ts";
import { shown } from "../kit/reader.ts";
import { drawingInputs, headerHoles } from "../../drawings/mod.ts";
import type { SoilResult } from "../../soil/types.ts";
import type { Study } from "../../study/mod.ts";
import type { TubesResult } from "../../tubes/types.ts";
import type { BalanceStudy, BlockedRow, WantedHeader } from "../../headers/mod.ts";
import { table } from "../kit/table.ts";

/** Smallest headers for a wanted evenness. */
export function wantedTable(rows: readonly WantedHeader[]): DisplayItem {
  return table(rows, [
    { head: "layout", value: (row) => LAYOUT_NAMES[row.layout] },
    { head: "target unevenness (CV)", value: (row) => row.unevenness, kind: "share" },
    {
      head: "smallest inside diameter",
      value: (row) => row.sized?.diameter ?? null,
      kind: "smallLength",
    },
    {
      head: "smallest over mean at that size",
      value: (row) => row.sized?.flowMin ?? null,
      digits: 2,
    },
    {
      head: "largest over mean at that size",
      value: (row) => row.sized?.flowMax ?? null,
      digits: 2,
    },
    {
      head: "pressure at that size",
      value: (row) => row.sized?.pressureDrop ?? null,
      kind: "pressure",
      us: false,
    },
  ], "Smallest header for a given unevenness; buy the next larger pipe");
}

/** What flooded tubes do to the others. */
export function blockedTable(rows: readonly BlockedRow[]): DisplayItem {
  return table(rows, [
    { head: "group of tubes", value: (row) => row.name },
    { head: "smallest of the open tubes", value: (row) => row.flowMin, digits: 2 },
    { head: "largest of the open tubes", value: (row) => row.flowMax, digits: 2 },
    { head: "pressure", value: (row) => row.pressureDrop, kind: "pressure" },
    { head: "heat, same air flow", value: (row) => row.heat, kind: "sharePrecise" },
  ], "The same air through the remaining tubes; flows over the mean of the clean group");
}

/** Holes of the plates that even out the field. */
export function balanceTable(balance: BalanceStudy): DisplayItem {
  return table(
    balance.tubes,
    [
      { head: "tube", value: (_, index) => index + 1, kind: "count" },
      { head: "flow over mean, no orifice", value: (row) => row.share, digits: 3 },
      { head: "orifice diameter", value: (row) => row.hole, kind: "smallLength" },
    ],
    `${balance.plates} of ${balance.tubes.length} tubes get an orifice; pressure ${
      shown(balance.pressureBefore, "pressure")
    } without, ${shown(balance.pressureAfter, "pressure")} with orifices`,
  );
}

/** The drilling table of one supply header, as on the sheet of the header's holes. */
export function drillingTable(
  study: Study,
  results: { readonly soil: SoilResult; readonly tubes: TubesResult },
): DisplayItem {
  const layout = headerHoles(drawingInputs(study, results));
  return table(
    layout.holes,
    [
      { head: "hole", value: (hole) => hole.number, kind: "count" },
      { head: "along, from the first", value: (hole) => hole.along, digits: 3, kind: "depth" },
      { head: "angle, degrees", value: (hole) => hole.angle, digits: 0 },
      { head: "arc", value: (hole) => hole.around, kind: "smallLength" },
      { head: "hole diameter", value: (hole) => hole.diameter, kind: "smallLength" },
    ],
    `${layout.holes.length} holes in a header of ${shown(layout.headerDiameter, "smallLength")}; ${
      layout.holes.length < 2
        ? "a single hole"
        : `${shown(layout.strengthLeft, "share")} of the closest pitch is left, ${
          shown(layout.ligament, "smallLength")
        } of wall`
    }`,
  );
}
