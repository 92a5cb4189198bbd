/** What headers of another diameter cost than the price list is for. @module */
import type { PriceList } from "./price_list.ts";

/** What is bought by the diameter of the headers. */
const BY_DIAMETER: ReadonlySet<string> = new Set(["header-pipe", "header-cap"]);

/**
 * A price list for headers of another diameter: pipe and caps cost in proportion to it (common
 * practice, no source).
 *
 * @param list that prices the headers of a study
 * @param ratio of the other diameter to that of the study's supply header
 */
export function headerPrices(list: PriceList, ratio: number): PriceList {
  return {
    ...list,
    prices: list.prices.map((one) =>
      BY_DIAMETER.has(one.id) ? { ...one, price: one.price * ratio } : one
    ),
  };
}
