/** The house with and without store, with and without night curtain. @module */
import { min } from "d3-array";
import {
  alone,
  firstHourBelow,
  hoursBelow,
  kilowattHours,
  piece,
  type Steps,
  together,
} from "../../basics/mod.ts";
import type { LimitHours } from "../../climate/types.ts";
import { usualCurtain } from "../../house/mod.ts";
import type { HouseYear } from "../../house/types.ts";
import { baselineRequest } from "../baseline.ts";
import {
  baselineTask,
  orBaseline,
  reducedStores,
  type SettledQuestion,
  settledTask,
} from "../runs.ts";
import type { SettledYear } from "../seasons/settled_year.ts";
import type { StoreRequest } from "../site.ts";

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
  return alone(waySteps(request, known));
}

/** Without and with store, without and with curtain. */
const FOUR = [false, true].flatMap((store) => [false, true].map((curtain) => ({ store, curtain })));

/** The four houses in pieces. Parameters and result are those of {@link houseWays}. */
export function* waySteps(request: StoreRequest, known?: KnownYears): Steps<HouseWay[]> {
  const own = request.houseInputs.curtain;
  const curtain = own ?? usualCurtain(request.houseInputs.heatSetPoint);
  const houses = FOUR.map((way) => ({
    ...way,
    known: way.curtain === (own !== null) ? known?.[way.store ? "store" : "noFan"] : undefined,
  }));
  const sought = houses.filter((house) => house.known === undefined);
  const changed = sought.map((house) => {
    const houseInputs = { ...request.houseInputs, curtain: house.curtain ? curtain : null };
    return house.store ? { ...request, houseInputs } : baselineRequest({ ...request, houseInputs });
  });
  const stores = yield* reducedStores(changed);
  const years = yield* together(
    ...stores.flatMap((store, k) =>
      [false, true].map((heated) =>
        sought[k]!.store
          ? piece<SettledQuestion, SettledYear>(settledTask, { ...store, heated })
          : piece(baselineTask, { ...store, heated })
      )
    ),
  );
  // the house without a store and with the same curtain is sought wherever one with a store is
  const bareOf = ({ curtain }: typeof sought[number]) =>
    sought.findIndex((other) => !other.store && other.curtain === curtain);
  const found = (k: number): KnownYear => {
    const bare = bareOf(sought[k]!);
    const [free, held] = [0, 1].map((heated) =>
      orBaseline(years[2 * k + heated]!, years[2 * bare + heated]!)
    );
    return { year: free!.year, backupHeat: kilowattHours(held!.ledger.heater) };
  };
  return waysCompared(
    houses.map((house) => houseAlone(house, house.known ?? found(sought.indexOf(house)))),
  );
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

function houseAlone(
  { store, curtain }: Pick<HouseWay, "store" | "curtain">,
  { year, backupHeat }: KnownYear,
): HouseAlone {
  const air = year.airTemperature;
  return {
    name: `${store ? "store" : "no store"}, ${curtain ? "curtain" : "no curtain"}`,
    store,
    curtain,
    year,
    coldestHour: min(air)!,
    hoursBelowFreezing: hoursBelow(air, 0),
    firstFreeze: firstHourBelow(air, 0),
    backupHeat,
    hoursBelow: LIMITS.map((limit) => ({ limit, hours: hoursBelow(air, limit) })),
  };
}
