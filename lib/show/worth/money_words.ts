/** Money in words. @module */
import { showNumber } from "../../units/mod.ts";

/** An amount of money, such as "1 250 crowns"; a dash where there is none. */
export function moneyText(amount: number | null | undefined, currency: string | null): string {
  if (amount === null || amount === undefined) return "–";
  return `${showNumber(amount, 0)} ${currency ?? ""}`.trim();
}

/** Price of a kilowatt-hour, such as "0.14 crowns/kWh"; a dash where there is none. */
export function priceText(price: number | null | undefined, currency: string | null): string {
  if (price === null || price === undefined) return "–";
  return `${showNumber(price, 3)} ${currency ?? ""}/kWh`;
}

/** Price of an hour, such as "2.10 crowns/h"; a dash where there is none. */
export function hourPriceText(price: number | null, currency: string | null): string {
  return price === null ? "–" : `${showNumber(price, 2)} ${currency ?? ""}/h`;
}

/** Years, such as "12.5 years"; null where it never pays. */
export function yearsText(years: number | null): string {
  return years === null ? "never within the years looked at" : `${showNumber(years, 1)} years`;
}
