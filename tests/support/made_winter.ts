/** A made-up winter of a house, the later the colder. */
import type { HouseWinter } from "../../lib/store/mod.ts";

const below = (limit: number, hours: number) => ({
  limit,
  hours,
  degreeHours: hours,
  first: hours > 0 ? 8700 : null,
  last: hours > 0 ? 100 : null,
  longestSpell: Math.min(hours, 9),
});

/**
 * A house in a winter.
 *
 * @param place of the winter, from 0: each is a tenth of a kelvin colder and takes 10 kWh more
 * @param offset K colder than that, for a house without a store
 * @param hours h below the killing limit
 */
export function madeHouseWinter(place: number, offset: number, hours: number): HouseWinter {
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
