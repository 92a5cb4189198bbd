import { assert } from "@std/assert";
import { floorColumn, houseModel, runHouseYear, withHeater } from "../../../lib/house/mod.ts";
import { HOUSE, simpleSoil, simpleYear } from "../fixtures.ts";

const winter = simpleYear({ temperature: (hour) => 3 - 18 * Math.cos(2 * Math.PI * hour / 8760) });

Deno.test("earth against the north wall saves heat", () => {
  // Property: sign; the buried part sees the month's mean through more resistance.
  const demand = (northEarthHeight: number) => {
    const model = houseModel({ ...HOUSE, northWall: 1.5, northEarthHeight }, winter);
    const edge = { geometry: model.geometry, edge: HOUSE };
    return runHouseYear(withHeater(model, Infinity), floorColumn({ ...edge, ...simpleSoil(4, 12) }))
      .ledger.heater;
  };
  assert(demand(1.5) < demand(0));
});
