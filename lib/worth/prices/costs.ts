/**
 * What the quantities cost.
 *
 * @module
 */
import { sum } from "d3-array";
import type { MaterialQuantity } from "../quantities/types.ts";
import { findPrice, type PriceList } from "./price_list.ts";

/** A quantity with its price; money in the currency of the list. */
export interface CostRow extends MaterialQuantity {
  /** money for one unit; null where the list has none */
  readonly price: number | null;
  /** money: price × amount to order; null where there is no price */
  readonly cost: number | null;
  /** years until it is bought again; null where it lasts */
  readonly life: number | null;
}

/** Costs of the store, in the currency of the list. */
export interface Costs {
  /** every quantity */
  readonly rows: readonly CostRow[];
  /** what the list does not price, by name */
  readonly missing: readonly string[];
  /** money for materials, machines, licensed work and papers that have a price */
  readonly bought: number;
  /** hours of work by hand at the list's rate; null where it has none */
  readonly labour: number | null;
  /** money set aside for what was not foreseen, on all the rest with hired labour */
  readonly contingency: number;
  /** money of the first cost with the work hired; null where a price is missing */
  readonly hired: number | null;
  /** money of the first cost with the work by hand done by the owner for nothing; null where a price is missing */
  readonly own: number | null;
}

/**
 * Prices the take-off. The board at the edge of the floor belongs to the house and is not counted.
 *
 * @param quantities rows of the take-off
 * @param list prices
 * @param contingency share added for what was not foreseen
 */
export function priceQuantities(
  quantities: readonly MaterialQuantity[],
  list: PriceList,
  contingency: number,
): Costs {
  const rows = quantities.map((row): CostRow => {
    const found = findPrice(list, row.id, row.unit);
    return {
      ...row,
      price: found?.price ?? null,
      cost: found === null ? null : found.price * row.order,
      life: found?.life ?? null,
    };
  });
  const counted = rows.filter(({ part }) => part !== "house");
  const missing = [...new Set(counted.filter(({ cost }) => cost === null).map(({ id }) => id))];
  const bought = sum(counted.filter(({ part }) => part !== "labour"), ({ cost }) => cost ?? 0);
  const labour = counted.find(({ part }) => part === "labour")?.cost ?? null;
  const own = bought * (1 + contingency);
  const hired = (bought + (labour ?? 0)) * (1 + contingency);
  const boughtMissing = missing.some((id) => id !== "labour");
  return {
    rows,
    missing,
    bought,
    labour,
    contingency: hired - bought - (labour ?? 0),
    hired: missing.length > 0 ? null : hired,
    own: boughtMissing ? null : own,
  };
}
