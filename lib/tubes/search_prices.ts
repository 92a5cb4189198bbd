/**
 * Prices for the search.
 *
 * @module
 */
import tableText from "../../data/tubes/search_prices.csv" with { type: "text" };
import { InputError, readDataTable } from "../basics/mod.ts";
import type { SearchPrices } from "./search.ts";

/**
 * Reads prices in the layout of data/tubes/search_prices.csv: one line an item; tubes by their id, and
 * the items `tube-ends` and `excavation`.
 *
 * @param content CSV text
 * @param file name shown in messages
 * @returns the prices
 * @throws {InputError} where an item is missing or a price makes no sense
 */
export function readSearchPrices(content: string, file: string): SearchPrices {
  const prices = new Map<string, number>();
  for (const row of readDataTable(content, file, ["item", "price", "unit", "source"])) {
    const price = row.number("price");
    if (price < 0) {
      throw new InputError("Cannot use a price below 0", { file, line: row.line, column: "price" });
    }
    prices.set(row.text("item"), price);
  }
  const needed = (item: string): number => {
    const price = prices.get(item);
    if (price === undefined) throw new InputError(`Cannot find the price of ${item}`, { file });
    return price;
  };
  const perTube = needed("tube-ends");
  const excavation = needed("excavation");
  const tubePerMetre = Object.fromEntries(
    [...prices].filter(([item]) => item !== "tube-ends" && item !== "excavation"),
  );
  return { tubePerMetre, perTube, excavation };
}

/** Invented prices of the demo farm: put your own in their place. */
export const DEMO_SEARCH_PRICES: SearchPrices = readSearchPrices(
  tableText,
  "data/tubes/search_prices.csv",
);
