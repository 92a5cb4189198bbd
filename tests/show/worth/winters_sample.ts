/** Made-up winters: the later the colder. */
import type { HouseWinter, PairedWinter } from "../../../lib/store/mod.ts";
import { madeHouseWinter } from "../../support/made_winter.ts";

const house = (place: number, offset: number): HouseWinter =>
  madeHouseWinter(place, offset, Math.max(0, place + 20 * offset - 100));

/** Winters with a store that warms the coldest hour by 4 K. */
export function madeWinters(count: number): PairedWinter[] {
  return Array.from({ length: count }, (_, winter) => ({
    winter,
    coldestOutdoors: -30 - winter / 10,
    withStore: house(winter, 0),
    without: house(winter, 4),
  }));
}
