/** Defaults of the worth section that follow from the fuel. @module */
import type { NoteDefault } from "../basics/mod.ts";
import type { WorthGiven, WorthInputs } from "./fields.ts";
import { findFuel } from "./prices/fuels.ts";
import type { PriceList } from "./prices/price_list.ts";

/** Fills the heater's efficiency from the fuel and takes the prices that were read. */
export function completeWorth(
  given: WorthGiven,
  before: { readonly prices: PriceList | null },
  note: NoteDefault,
): WorthInputs {
  return {
    ...given,
    prices: before.prices,
    efficiency: note(
      "worth.efficiency",
      given.efficiency,
      () => findFuel(given.fuel).efficiency,
    ),
  };
}
