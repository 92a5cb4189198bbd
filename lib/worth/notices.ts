/** Messages of the worth chapter. @module */
import { type Notice, notice } from "../basics/mod.ts";
import { showBoth } from "../units/mod.ts";
import type { WorthRequest } from "./request.ts";
import type { WorthResult } from "./types.ts";

/** What a reader must know before he uses the money figures. */
export function worthNotices(
  result: Omit<WorthResult, "notices">,
  { inputs, energy, runsFree }: WorthRequest,
): Notice[] {
  const list: Notice[] = [];
  if (inputs.prices === null) {
    list.push(notice(
      "warning",
      "worth",
      'No price list: name one under "worth.prices" (a CSV file; docs/worth.md says how it is written). ' +
        "Quantities are there, money is not.",
    ));
  } else if (result.missing.length > 0) {
    list.push(notice(
      "warning",
      "worth",
      `No price in ${inputs.prices.file} for ${result.missing.join(", ")}: ` +
        "costs and savings are left open until each has one (0 where it costs nothing).",
    ));
  }
  if (runsFree) {
    list.push(notice(
      "info",
      "worth",
      `The study's house has no heater of its own. Savings are those of a heater that would hold the set ` +
        `point: ${showBoth(energy.backupHeatNoFan, "energy")} a year with the fan always off, ${
          showBoth(energy.backupHeat, "energy")
        } with the store.`,
    ));
  }
  list.push(notice(
    "caution",
    "worth",
    "Quantities follow the drawings, prices are the user's: get written offers before ordering. Digging " +
      "permits, buried services, footings, mains wiring and fuel burners are for licensed people.",
  ));
  return list;
}
