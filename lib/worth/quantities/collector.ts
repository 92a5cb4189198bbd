/** Quantities of a plate collector. @module */
import type { MaterialQuantity, TakeOffInputs } from "./types.ts";

/** The plate; outdoors its glazed box and the duct between house and box as well. */
export function collectorRows({ collector }: TakeOffInputs): MaterialQuantity[] {
  if (collector === null) return [];
  const { place, area, ductLength } = collector;
  const row = (id: string, item: string, amount: number, unit: string): MaterialQuantity => ({
    id,
    part: "air and control",
    item,
    amount,
    unit,
    order: amount,
    basis: "plate collector of the study",
  });
  const plate = row("collector-plate", "perforated dark plate on its frame, fitted", area, "m²");
  return place === "inside" ? [plate] : [
    plate,
    row("collector-box", "insulated box with its cover, fitted", area, "m²"),
    row("collector-duct", "insulated duct outdoors, fitted", ductLength, "m"),
  ];
}
