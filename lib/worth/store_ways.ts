/** The store with a plate collector, or without the one it has. @module */
import { min, sum } from "d3-array";
import { hoursBelow, kilowattHours, piece, type Steps, together } from "../basics/mod.ts";
import { findCrop, houseGeometry } from "../house/mod.ts";
import type { AsItIs } from "../store/like_houses.ts";
import { type PlateCollector, suctionFault, USUAL_SUCTION, usualCollector } from "../store/mod.ts";
import { orBaseline, reducedStores, settledTask } from "../store/runs.ts";
import type { StoreRequest } from "../store/site.ts";
import { showBoth } from "../units/mod.ts";
import { type Alternative, storeAlternative } from "./alternatives.ts";
import { storeMoney, worthMoney } from "./compute.ts";
import { judgeMoney } from "./earnings.ts";
import type { WorthRequest } from "./request.ts";

/** The store otherwise, with what its money waits for. */
export interface StoreWay extends Alternative {
  /** ids of prices that are missing */
  readonly missing: readonly string[];
}

/** The study's store with another collector. */
interface OtherStore {
  readonly name: string;
  readonly change: string;
  readonly collector: PlateCollector | undefined;
}

/**
 * What else the intake could be: without the plate where the study has one; else with the usual one on
 * the back wall, of the area that suits its air flow or as large as the wall. None where no such plate
 * suits the flow.
 */
function otherStores({ inputs, fan, houseInputs }: StoreRequest): readonly OtherStore[] {
  const own = inputs.collector;
  if (own !== undefined) {
    return [{
      name: "heat store without its plate collector",
      change: `without the plate of ${showBoth(own.area, "area")}; all else as planned`,
      collector: undefined,
    }];
  }
  const airFlow = fan.charge?.airFlow ?? fan.airFlow;
  const wall = sum(
    houseGeometry(houseInputs).parts,
    ({ side, element, area }) => side === "back" && element !== "roof" ? area : 0,
  );
  const area = Math.min(airFlow / USUAL_SUCTION, wall);
  if (!(area > 0) || suctionFault(area, airFlow) !== null) return [];
  return [{
    name: "heat store with a plate collector",
    change: `${showBoth(area, "area")} of perforated dark plate on the back wall before the ` +
      "intake; its pressure is not in the fan's",
    collector: usualCollector(area),
  }];
}

/**
 * Runs the store with the other intake through the settled year, free and held, on all slices, and
 * prices it by the same take-off. Heat, hours and kelvin are held against the house as the study has
 * it with the fan never on, like those of all other ways.
 *
 * @param request the store's request
 * @param worth what the worth chapter is computed from
 * @param asItIs the house with the fan never on
 */
export function* storeWaySteps(
  request: StoreRequest,
  worth: WorthRequest,
  asItIs: AsItIs,
): Steps<readonly StoreWay[]> {
  const others = otherStores(request);
  const stores = yield* reducedStores(others.map(({ collector }) => ({
    ...request,
    inputs: { ...request.inputs, collector },
  })));
  const years = yield* together(...stores.flatMap((store) => [
    piece(settledTask, { ...store, heated: false }),
    piece(settledTask, { ...store, heated: true }),
  ]));
  const limit = findCrop(request.houseInputs.crop).killingLimit;
  const bare = asItIs.years;
  const demand = kilowattHours(bare.held.ledger.heater);
  return others.map(({ name, change, collector }, k) => {
    const [free, held] = [
      orBaseline(years[2 * k]!, bare.free),
      orBaseline(years[2 * k + 1]!, bare.held),
    ];
    const backupHeat = kilowattHours(held.ledger.heater);
    const { missing, money } = moneyOf({
      ...worth,
      field: { ...worth.field, collector: collector ?? null },
      energy: {
        backupHeat,
        backupHeatNoFan: demand,
        fanEnergy: kilowattHours(held.ledger.fanEnergy),
      },
    });
    const air = free.year.airTemperature;
    return {
      ...storeAlternative({
        saved: demand - backupHeat,
        coldestHourGain: min(air)! - min(bare.free.year.airTemperature)!,
        cropHoursAvoided: hoursBelow(bare.free.year.airTemperature, limit) -
          hoursBelow(air, limit),
      }, money),
      name,
      change,
      missing,
    };
  });
}

/** Capital, price of heat and net savings; null with the ids where a price is missing. */
function moneyOf(worth: WorthRequest) {
  const { costs, parts, prices } = worthMoney(worth);
  const missing = [
    ...(costs?.missing ?? []).filter((id) => worth.inputs.labour === "hired" || id !== "labour"),
    ...prices.missing,
  ];
  const money = costs === null || parts === null ? null : storeMoney(worth, costs, parts);
  if (money === null) {
    return { missing: worth.inputs.prices === null ? ["worth.prices"] : missing, money: null };
  }
  const { capital, costOfHeat, earned } = judgeMoney(money);
  return { missing, money: { capital, costOfHeat, netSavings: earned.netSavings } };
}
