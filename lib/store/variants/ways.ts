/** The house with and without store, with and without night curtain. @module */
import { min } from "d3-array";
import { firstHourBelow, hoursBelow, kilowattHours } from "../../basics/mod.ts";
import type { LimitHours } from "../../climate/types.ts";
import { houseModel, usualCurtain, withHeater } from "../../house/mod.ts";
import type { HouseInputs, HouseModel, HouseYear } from "../../house/types.ts";
import { type Baseline, baselineYears } from "../baseline.ts";
import { settledYear } from "../seasons/settled_year.ts";
import type { StoreRequest } from "../site.ts";
import { type SoilModel, soilModel } from "../seasons/soil_model.ts";

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

/** A year of the study's own house that is known already. */
export interface KnownYear {
  /** hourly year of the free-running house */
  readonly year: HouseYear;
  /** kWh a year to hold the heating set point */
  readonly backupHeat: number;
}

/** Years of the study's own house, curtain as it is. */
export interface KnownYears {
  /** with the store */
  readonly store: KnownYear;
  /** fan always off */
  readonly noFan: KnownYear;
}

/**
 * Four settled years: neither, curtain alone, store alone, both; all on the store's soil. A study
 * without a curtain is given a usual one.
 *
 * @param request the store's request, SI inside
 * @param known years of the house as the study has it, which are not run again
 * @returns settled years of the four houses
 */
export function houseWays(request: StoreRequest, known?: KnownYears): HouseWay[] {
  return waysCompared(fourHouses(request, known));
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

function fourHouses(request: StoreRequest, known?: KnownYears): HouseAlone[] {
  const own = request.houseInputs.curtain;
  const curtain = own ?? usualCurtain(request.houseInputs.heatSetPoint);
  return [false, true].flatMap((store) =>
    [false, true].map((curtained): HouseAlone => {
      const asStudied = curtained === (own !== null) ? known : undefined;
      const { year, backupHeat } = asStudied?.[store ? "store" : "noFan"] ??
        settledHouse(request, store, curtained ? curtain : null);
      const air = year.airTemperature;
      return {
        name: `${store ? "store" : "no store"}, ${curtained ? "curtain" : "no curtain"}`,
        store,
        curtain: curtained,
        year,
        coldestHour: min(air)!,
        hoursBelowFreezing: hoursBelow(air, 0),
        firstFreeze: firstHourBelow(air, 0),
        backupHeat,
        hoursBelow: LIMITS.map((limit) => ({ limit, hours: hoursBelow(air, limit) })),
      };
    })
  );
}

/** The house with another curtain on soil that has settled to it, free running and heated. */
function settledHouse(
  request: StoreRequest,
  fan: boolean,
  curtain: HouseInputs["curtain"],
): KnownYear {
  const houseInputs = { ...request.houseInputs, curtain };
  const changed = { ...request, houseInputs };
  const house = houseModel(houseInputs, request.climate);
  const model = soilModel(changed, house);
  const { free, held } = fan
    ? storeYears(changed, model, house)
    : baselineYears(changed, model, house);
  return { year: free.year, backupHeat: kilowattHours(held.ledger.heater) };
}

function storeYears(request: StoreRequest, model: SoilModel, house: HouseModel): Baseline {
  const free = settledYear({ request, model, house: withHeater(house, 0), fan: true });
  const held = settledYear({
    request,
    model,
    house: withHeater(house, Infinity),
    fan: true,
    start: free.soilState,
  });
  return { free, held };
}
