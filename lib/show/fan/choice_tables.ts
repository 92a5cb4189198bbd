/** Tables that help to choose a fan, and the operating point in words. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { showNumber } from "../../units/mod.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import {
  type ElevationTrial,
  type FanInputs,
  type FanTrial,
  LEAST_FLOW_RATIO,
  type SummarisedFan,
} from "../../fan/mod.ts";
import { paragraph, table } from "../kit/table.ts";

/**
 * Every fan of the list against this field: a point, or why there is none.
 *
 * @param trials every fan tried
 * @param count number of fans side by side
 */
export function choiceTable(trials: readonly FanTrial[], count: number): DisplayItem {
  return table(trials, [
    { head: "fan", value: (row) => row.name },
    { head: "air flow", value: (row) => row.result?.airFlow ?? null, kind: "airFlow" },
    { head: "share of design", value: (row) => row.result?.flowRatio ?? null, kind: "share" },
    {
      head: "pressure",
      value: (row) => row.result?.pressure ?? null,
      kind: "pressure",
      us: false,
    },
    { head: "power", value: (row) => row.result?.power ?? null, kind: "power", us: false },
    { head: "efficiency", value: (row) => row.result?.efficiency ?? null, kind: "share" },
    { head: "", value: (row) => wordsOf(row) },
  ], `${count} of each fan at rated speed on this field`);
}

function wordsOf({ result, reason }: FanTrial): string {
  if (result === null) return reason;
  if (result.stalled) return "stalls: roars and hunts";
  if (result.flowRatio < LEAST_FLOW_RATIO) return "too weak";
  if (result.flowRatio > 1.15) return "more air than needed: reduce the speed";
  return "";
}

/** The same field and fans higher up. */
export function elevationTable(trials: readonly ElevationTrial[]): DisplayItem {
  return table(trials, [
    { head: "elevation", value: (row) => row.elevation, kind: "length", digits: 0 },
    {
      head: "air density",
      value: (row) => row.result?.density ?? null,
      kind: "density",
      us: false,
    },
    { head: "air flow", value: (row) => row.result?.airFlow ?? null, kind: "airFlow" },
    { head: "pressure", value: (row) => row.result?.pressure ?? null, kind: "pressure" },
    { head: "power", value: (row) => row.result?.power ?? null, kind: "power", us: false },
    { head: "heat per kelvin", value: (row) => row.capacityRate, kind: "conductance" },
    { head: "", value: (row) => row.reason },
  ], "The same field and fans at standard pressure and 25 degC");
}

/** The operating point as a few sentences. */
export function pointWords(result: SummarisedFan, inputs: FanInputs): DisplayItem {
  const fans = inputs.count === 1 ? "The fan moves" : `The ${inputs.count} fans move`;
  const { airPower, freeAirShare } = result.summary;
  const dirty = result.dirtyFilter;
  return paragraph(
    `${fans} ${shownBoth(result.airFlow, "airFlow")}${
      inputs.count === 1 ? "" : " together"
    }, where the field needs ${
      shownBoth(result.pressure, "pressure")
    } and the curve gives exactly that. This is ${
      shown(freeAirShare, "share")
    } of the free-air figure at this speed and ${
      shown(result.flowRatio, "share")
    } of the design flow. ${
      result.stalled
        ? "The operating point is to the left of the pressure peak: the fans stall. Choose a larger fan or a field with less resistance. "
        : "The operating point is to the right of the pressure peak, where the fan runs steadily. "
    }Of ${showNumber(result.power, 0)} W drawn, ${showNumber(airPower, 0)} W move air. ${
      inputs.filterPressure <= 0
        ? "No filter or screen is included."
        : dirty === null
        ? "With the dirty filter there is no operating point: the fans can no longer drive air through the field."
        : `With the dirty filter the flow falls to ${shownBoth(dirty.airFlow, "airFlow")}.`
    }`,
  );
}
