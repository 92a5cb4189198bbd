/** Insulation or store first? What each saves, in words. @module */
import type { DisplayItem } from "../kit/figure.ts";
import { shown, shownBoth } from "../kit/reader.ts";
import type { FirstStep } from "../../store/mod.ts";
import { paragraph } from "../kit/table.ts";

/** "Insulation or store first?", answered. */
export function firstStepsWords(steps: readonly FirstStep[]): DisplayItem {
  const store = steps.find((step) => step.kind === "store")!;
  const house = steps.filter((step) => step.kind === "house");
  const larger = house.filter((step) => step.saved > store.saved);
  const lift = house.filter((step) => step.coldestHourGain > store.coldestHourGain);
  const names = (list: readonly FirstStep[]) => list.map((step) => step.name).join(", ");
  const kelvin = (value: number) => shownBoth(value, "temperatureDifference");
  const verdict = store.saved <= 0
    ? "The store saves no heat in this house and climate: do not dig for heat."
    : larger.length > 0
    ? `${
      larger.length === 1 ? "One improvement saves" : `${larger.length} improvements each save`
    } more heat than the store (${shownBoth(store.saved, "energy")} a year): ${
      names(larger)
    }. What ` +
      "comes first for the money is the verdict's to say."
    : `No remaining improvement saves as much heat as the store (${
      shownBoth(store.saved, "energy")
    } a year), but compare the price of each with that of digging: each also makes the stored heat go further.`;
  const cold = lift.length > 0
    ? ` Raising the coldest hour by more than the store does (${kelvin(store.coldestHourGain)}): ${
      names(lift)
    }.`
    : ` The store raises the coldest hour most: by ${kelvin(store.coldestHourGain)}.`;
  const fan = store.saved > 0
    ? ` The store's fan uses ${
      shown(store.electricity, "electricity")
    } of electricity a year; deducting that leaves ${shownBoth(store.net, "energy")}.`
    : "";
  return paragraph(verdict + cold + fan);
}
