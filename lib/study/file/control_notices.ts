/** Controls that work against each other: possible, but hardly meant. @module */
import { basename } from "node:path";
import { describeLocation, type Notice, notice } from "../../basics/mod.ts";
import { seasonDays, showBoth } from "../../units/mod.ts";
import type { ChapterInputs } from "./derive.ts";
import type { KeyPath, YamlSource } from "./yaml_source.ts";

type Controls = Pick<ChapterInputs, "house" | "store">;

interface ControlRule {
  readonly path: KeyPath;
  /** what is wrong; null where nothing is */
  readonly fault: (study: Controls) => string | null;
}

const degrees = (value: number): string => showBoth(value, "temperature");

/** Days on which the store may be charged, by the calendar alone. */
function chargingDays({ fanSeason = "all year", chargeSeason = "all year" }: Controls["store"]) {
  const charging = seasonDays(chargeSeason);
  return seasonDays(fanSeason).reduce((sum, runs, day) => sum + runs * charging[day]!, 0);
}

/** K by which the estimate lets the ridge exceed the house in sun, at most (own figure of the demo). */
const USUAL_EXCESS = 3;

const CONTROL_RULES: readonly ControlRule[] = [
  {
    path: ["store", "fanSeason"],
    fault: ({ store }) =>
      store.fanSeason === "never"
        ? '"store.fanSeason" is never: the fan does not run, and the house is the one without a store'
        : null,
  },
  {
    path: ["store", "chargeSeason"],
    fault: ({ store }) =>
      store.fanSeason === "never" || chargingDays(store) > 0
        ? null
        : `"store.chargeSeason" (${store.chargeSeason}) and "store.fanSeason" (${store.fanSeason}) ` +
          "have no day in common: nothing is charged, the fan only draws on the warmth of the ground",
  },
  {
    path: ["store", "maximumStore"],
    fault: ({ store }) =>
      store.maximumStore !== undefined && store.maximumStore < store.chargeAbove
        ? `"store.maximumStore" (${degrees(store.maximumStore)}) is below "store.chargeAbove" ` +
          `(${degrees(store.chargeAbove)}): charging stops while even the coolest air that may ` +
          "charge the store would still warm it"
        : null,
  },
  {
    path: ["store", "maximumStore"],
    fault: ({ house, store }) =>
      store.maximumStore !== undefined &&
        store.maximumStore < house.heatSetPoint + store.dischargeStart
        ? `"store.maximumStore" (${degrees(store.maximumStore)}) is less than ` +
          `"store.dischargeStart" above "house.heatSetPoint" (${degrees(house.heatSetPoint)}): ` +
          "a store charged no further gives a heated house nothing"
        : null,
  },
  {
    path: ["store", "dischargeBelow"],
    fault: ({ house, store }) =>
      store.dischargeBelow >= house.ventSetPoint
        ? `"store.dischargeBelow" (${degrees(store.dischargeBelow)}) is not below ` +
          `"house.ventSetPoint" (${
            degrees(house.ventSetPoint)
          }): the vents let out what the store gives`
        : null,
  },
  {
    path: ["store", "dischargeBelow"],
    fault: ({ house, store }) =>
      store.dischargeBelow <= house.heatSetPoint
        ? `"store.dischargeBelow" (${degrees(store.dischargeBelow)}) is not above ` +
          `"house.heatSetPoint" (${
            degrees(house.heatSetPoint)
          }): the heater comes first, and the ` +
          "store of a heated house is not discharged"
        : null,
  },
  {
    path: ["store", "chargeAbove"],
    fault: ({ house, store }) =>
      store.chargeAbove >= house.ventSetPoint + (store.stratification ?? USUAL_EXCESS)
        ? `"store.chargeAbove" (${degrees(store.chargeAbove)}) is above "house.ventSetPoint" ` +
          `(${
            degrees(house.ventSetPoint)
          }), even at the ridge: the vents let the heat out before ` +
          "the store is charged"
        : null,
  },
  {
    path: ["house", "curtain", "closeBelowInside"],
    fault: ({ house: { curtain, heatSetPoint } }) =>
      curtain?.closeBelowInside !== undefined && curtain.closeBelowInside <= heatSetPoint
        ? `"house.curtain.closeBelowInside" (${degrees(curtain.closeBelowInside)}) is not above ` +
          `"house.heatSetPoint" (${
            degrees(heatSetPoint)
          }): a heated house never gets cold enough ` +
          "to close the curtain for that"
        : null,
  },
  {
    path: ["house", "curtain", "dullBelow"],
    fault: ({ house: { curtain } }) =>
      curtain?.dullDays === "limits" && (curtain.clock ?? "none") === "none" &&
        curtain.dullBelow! <= curtain.closeBelow
        ? '"house.curtain.dullBelow" is not above "house.curtain.closeBelow": the curtain is shut in ' +
          "so little light already, and dullDays keeps it shut no longer"
        : null,
  },
];

/**
 * What the controls of a study contradict in each other, each with its line.
 *
 * @param study checked inputs
 * @param source the study file
 */
export function controlNotices(study: Controls, source: YamlSource): readonly Notice[] {
  return CONTROL_RULES.flatMap(({ path, fault }) => {
    const text = fault(study);
    if (text === null) return [];
    const { line } = source.locate(path);
    const place = describeLocation({ file: basename(source.file), line });
    return [notice("warning", "study", `${place}: ${text}`)];
  });
}
