/** What the worth chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";
import type { Alternative } from "./alternatives.ts";
import type { MoneyDoubt } from "./doubt/types.ts";
import type { Earnings } from "./money/comparison.ts";
import type { Costs } from "./prices/costs.ts";
import type { MaterialQuantity } from "./quantities/types.ts";
import type { VerdictGiven } from "./verdict.ts";

export type { WorthInputs } from "./fields.ts";

/** Money of one year, discounted, in the currency of the prices. */
export interface MoneyYear {
  /** 0 for today */
  readonly year: number;
  /** saved less spent up to the end of this year, against no store */
  readonly balance: number;
  /** the same without discounting */
  readonly undiscounted: number;
}

/** What the store earns, in the currency of the prices. */
export interface StoreEarnings extends Earnings {
  /** money of the first cost less grants */
  readonly capital: number;
  /** money, the same with the work by hand done by the owner; null where a price is missing */
  readonly capitalOwnLabour: number | null;
  /** money, the same with all work hired; null where a price is missing, as that of the work */
  readonly capitalHiredLabour: number | null;
  /** money for a kWh of the heat that the store saves, its electricity counted */
  readonly costOfHeat: number | null;
  /** ratio of the fuel's price at which the store just pays to today's; null where none does */
  readonly breakEvenFuel: number | null;
  /** year by year from today */
  readonly cashFlow: readonly MoneyYear[];
}

/** Result of the worth chapter. */
export interface WorthResult {
  /** everything to buy and do */
  readonly quantities: readonly MaterialQuantity[];
  /** currency of the prices; null where the study names no price list */
  readonly currency: string | null;
  /** the quantities priced; null without a price list */
  readonly costs: Costs | null;
  /** money for a kWh of heat from the back-up heater; null where it has no price */
  readonly heatPrice: number | null;
  /** money that such a kWh is worth over the years, with the rise of its price; null likewise */
  readonly heatWorth: number | null;
  /** money for a kWh of electricity; null where it has no price */
  readonly electricityPrice: number | null;
  /** name of the fuel */
  readonly fuel: string;
  /** units of fuel saved a year, and the unit */
  readonly fuelSaved: { readonly amount: number; readonly unit: string };
  /** kg of carbon dioxide a year that the store saves, the fans' electricity counted */
  readonly carbonSaved: number;
  /** what the store earns; null where a price is missing */
  readonly earnings: StoreEarnings | null;
  /** ids of prices that are missing; the reason for what is null */
  readonly missing: readonly string[];
  /** the store and every measure on the house, the cheapest kWh first, those without a price last */
  readonly alternatives: readonly Alternative[];
  /** what must be mended before anybody digs, a sentence each; empty where nothing must */
  readonly designFaults: readonly string[];
  /** dig, not yet or no */
  readonly verdict: VerdictGiven;
  /** how sure the money is; null where a price is missing */
  readonly doubt: MoneyDoubt | null;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
