/** The `worth` section of the study file. @module */
import {
  choice,
  type Fields,
  id,
  open,
  type Partly,
  quantity,
  quantityOr,
  text,
  whole,
  yesNo,
} from "../basics/fields.ts";
import { findFuel } from "./prices/fuels.ts";
import type { PriceList } from "./prices/price_list.ts";

/** `worth` section of the study file, in SI; money in the currency of the price list. */
export interface WorthInputs {
  /** prices of the study; null where it names no list */
  readonly prices: PriceList | null;
  /** id in data/fuels: what heats the house otherwise */
  readonly fuel: string;
  /** heat given over energy bought, ratio */
  readonly efficiency: number;
  /** who does the work by hand */
  readonly labour: "hired" | "own";
  /** real discount rate a year, share */
  readonly discountRate: number;
  /** count of years looked at */
  readonly years: number;
  /** rise of the fuel's price a year beyond inflation, share */
  readonly fuelEscalation: number;
  /** rise of the price of electricity a year beyond inflation, share */
  readonly electricityEscalation: number;
  /** share of the first cost added for what was not foreseen */
  readonly contingency: number;
  /** share of the first cost spent on upkeep each year */
  readonly upkeep: number;
  /** money given towards the first cost, in the currency of the prices */
  readonly grant: number;
  /** m of a coil as tube is sold; null where it is sold by the metre */
  readonly coilLength: number | null;
  /** kg of carbon dioxide for a kWh from the grid */
  readonly gridCarbon: number;
  /** number of winters that the odds are counted from; 0 for none */
  readonly winters: number;
  /** money that is lost with a killed crop, in the currency of the prices; null where not given */
  readonly cropValue: number | null;
  /** true where other designs of the field are searched */
  readonly search: boolean;
  /** number of designs that the search takes through the year */
  readonly searchRuns: number;
  /** first cost less grants that a design may have, in the currency of the prices; null for no limit */
  readonly budget: number | null;
  /** half width of the range of the first cost, share */
  readonly doubtFirstCost: number;
  /** half width of the range of the heat saved, share */
  readonly doubtHeatSaved: number;
  /** half width of the range of the fans' electricity, share */
  readonly doubtFanEnergy: number;
  /** half width of the range of the fuel's price, share */
  readonly doubtFuelPrice: number;
  /** half width of the range of the price of electricity, share */
  readonly doubtElectricityPrice: number;
  /** half width of the range of the discount rate, as a share a year like the rate itself */
  readonly doubtDiscountRate: number;
}

/** The section as given: these keys may still wait for their default. */
export type WorthGiven =
  & Omit<Partly<WorthInputs, "efficiency">, "prices">
  & { readonly prices: string | undefined };

/** Keys of the section. */
export const worthFields: Fields<WorthGiven> = {
  prices: open(text),
  fuel: id(findFuel),
  efficiency: open(quantity),
  labour: choice("hired", "own"),
  discountRate: quantity,
  years: whole,
  fuelEscalation: quantity,
  electricityEscalation: quantity,
  contingency: quantity,
  upkeep: quantity,
  grant: quantity,
  coilLength: quantityOr("none", null),
  gridCarbon: quantity,
  winters: whole,
  cropValue: quantityOr("none", null),
  search: yesNo,
  searchRuns: whole,
  budget: quantityOr("none", null),
  doubtFirstCost: quantity,
  doubtHeatSaved: quantity,
  doubtFanEnergy: quantity,
  doubtFuelPrice: quantity,
  doubtElectricityPrice: quantity,
  doubtDiscountRate: quantity,
};
