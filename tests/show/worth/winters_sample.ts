/** Made-up winters: the later the colder. */
import type { HouseWinter, PairedWinter } from "../../../lib/store/mod.ts";

const below = (limit: number, hours: number) => ({
  limit,
  hours,
  degreeHours: hours,
  first: hours > 0 ? 8700 : null,
  last: hours > 0 ? 100 : null,
  longestSpell: Math.min(hours, 9),
});

function house(place: number, offset: number): HouseWinter {
  const hours = Math.max(0, place + 20 * offset - 100);
  return {
    coldestHour: -place / 10 - offset,
    crop: {
      freezing: below(0, hours + 100),
      killing: below(-9, hours),
      damage: below(-4, hours),
      growth: below(5, hours + 1000),
    },
    backupHeat: 5000 + 10 * place + 1000 * offset,
    heaterPeak: 9000,
    fanEnergy: 500,
  };
}

/** Winters with a store that warms the coldest hour by 4 K. */
export function madeWinters(count: number): PairedWinter[] {
  return Array.from({ length: count }, (_, winter) => ({
    winter,
    coldestOutdoors: -30 - winter / 10,
    withStore: house(winter, 0),
    without: house(winter, 4),
  }));
}
