/** Hours of work, from the quantities. @module */
import { sum } from "d3-array";
import { allowance } from "../../tubes/mod.ts";
import { showNumber } from "../../units/mod.ts";
import type { MaterialQuantity } from "./types.ts";

/** Hours by hand for each unit of a quantity, all common practice, no source. */
const WORK: readonly (readonly [label: string, hours: string, ids: RegExp])[] = [
  ["laying tubes", "hours to lay a metre of tube", /^tube:/],
  ["headers", "hours to fit a tube end", /^header-hole$/],
  ["risers", "hours to fit a metre of riser", /^riser-pipe$/],
  ["backfill in lifts", "hours to fill and tamp a cubic metre", /^backfill$/],
  ["boards", "hours to fit a square metre of board", /^flat-board$/],
  ["fans and drains", "hours to fit a fan or drain", /^(?:fan:|drain$|sump$)/],
];

/**
 * Hours of unskilled and skilled work that the builder can do alone; licensed work and the digger
 * are rows of their own.
 *
 * @param rows quantities of materials
 */
export function labourRow(rows: readonly MaterialQuantity[]): MaterialQuantity {
  const parts = WORK.map(([label, name, ids]) => ({
    label,
    hours: allowance(name) * sum(rows, ({ id, amount }) => ids.test(id) ? amount : 0),
  })).filter(({ hours }) => hours > 0);
  const hours = sum(parts, (part) => part.hours);
  return {
    id: "labour",
    part: "labour",
    item: "work by hand",
    amount: hours,
    unit: "h",
    order: Math.ceil(hours),
    basis: parts.map(({ label, hours: of }) => `${label} ${showNumber(of, 0)} h`).join(", "),
  };
}
