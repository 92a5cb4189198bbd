/** The house with and without store, with and without night curtain. @module */
import { min } from "d3-array";
import { firstHourBelow, hoursBelow, kilowattHours } from "../../basics/mod.ts";
import type { LimitHours } from "../../climate/types.ts";
import { houseModel, usualCurtain, withHeater } from "../../house/mod.ts";
import type { HouseYear } from "../../house/types.ts";
import { settledYear } from "../seasons/settled_year.ts";
import type { StoreRequest } from "../site.ts";
import { soilModel } from "../seasons/soil_model.ts";

/** One of the four houses. */
export interface HouseWay {
  /** row heading */
  readonly name: string;
  /** true where the fan may run */
  readonly store: boolean;
  /** true where the curtain closes at night */
  readonly curtain: boolean;
  /** free-running year */
  readonly year: HouseYear;
  /** degC */
  readonly coldestHour: number;
  /** h a year */
  readonly hoursBelowFreezing: number;
  /** hour index of the first hour below 0 °C after 1 July, null where there is none */
  readonly firstFreeze: number | null;
  /** kWh a year to hold the heating set point */
  readonly backupHeat: number;
  /** hours below -10 to 5 degC in the free-running house */
  readonly hoursBelow: readonly LimitHours[];
  /** kWh a year of back-up heat less than with neither store nor curtain */
  readonly saved: number;
  /** kWh a year that the store saves this house; null where it has none */
  readonly savedByStore: number | null;
}

/** degC whose hours are counted */
const LIMITS = [-10, -5, 0, 5];

/**
 * Four settled years: neither, curtain alone, store alone, both; all on the store's soil. A study
 * without a curtain is given a usual one.
 *
 * @param request the store's request, SI inside
 * @returns settled years of the four houses
 */
export function houseWays(request: StoreRequest): HouseWay[] {
  return waysCompared(fourHouses(request));
}

/** A house before it is compared with the others. */
export type HouseAlone = Omit<HouseWay, "saved" | "savedByStore">;

/**
 * What each house saves against the one with neither store nor curtain, and what the store saves in it.
 *
 * @param houses with and without store and curtain, kWh
 */
export function waysCompared(houses: readonly HouseAlone[]): HouseWay[] {
  const heat = (store: boolean, curtain: boolean) =>
    houses.find((house) => house.store === store && house.curtain === curtain)!.backupHeat;
  return houses.map((house) => ({
    ...house,
    saved: heat(false, false) - house.backupHeat,
    savedByStore: house.store ? heat(false, house.curtain) - house.backupHeat : null,
  }));
}

function fourHouses(request: StoreRequest): HouseAlone[] {
  const curtain = request.houseInputs.curtain ??
    usualCurtain(request.houseInputs.heatSetPoint);
  return [false, true].flatMap((store) =>
    [false, true].map((curtained): HouseAlone => {
      const houseInputs = { ...request.houseInputs, curtain: curtained ? curtain : null };
      const changed = { ...request, houseInputs };
      const house = houseModel(houseInputs, request.climate);
      const model = soilModel(changed, house);
      const run = { request: changed, model, fan: store };
      const free = settledYear({ ...run, house: withHeater(house, 0) });
      const heated = settledYear({
        ...run,
        house: withHeater(house, Infinity),
        start: free.soilState,
      });
      const air = free.year.airTemperature;
      return {
        name: `${store ? "store" : "no store"}, ${curtained ? "curtain" : "no curtain"}`,
        store,
        curtain: curtained,
        year: free.year,
        coldestHour: min(air)!,
        hoursBelowFreezing: hoursBelow(air, 0),
        firstFreeze: firstHourBelow(air, 0),
        backupHeat: kilowattHours(heated.ledger.heater),
        hoursBelow: LIMITS.map((limit) => ({ limit, hours: hoursBelow(air, limit) })),
      };
    })
  );
}
