/** Other ways to the same end: the house used otherwise, the store with another intake, and a heater alone on each fuel. @module */
import { alone, hoursBelow, kilowattHours, type Steps } from "../basics/mod.ts";
import { findCrop, houseUses } from "../house/mod.ts";
import { asItIsYears, likeYears } from "../store/like_houses.ts";
import { seasonDays } from "../units/mod.ts";
import type { StoreRequest } from "../store/site.ts";
import { type Alternative, measureAlternative } from "./alternatives.ts";
import { worthMoney } from "./compute.ts";
import type { WorthInputs } from "./fields.ts";
import { levelisedCost } from "./money/comparison.ts";
import { wearOut } from "./money/life_cycle.ts";
import { heatWorth } from "./money/plans.ts";
import { type Fuel, FUELS } from "./prices/fuels.ts";
import { findPrice } from "./prices/price_list.ts";
import type { WorthRequest } from "./request.ts";
import { type StoreWay, storeWaySteps } from "./store_ways.ts";
import { min } from "d3-array";

/** A heater that holds the set point on one fuel; money in the currency of the prices. */
export interface FuelWay {
  /** name of the fuel */
  readonly fuel: string;
  /** true for the fuel of the study */
  readonly own: boolean;
  /** money of the heater; null where it has no price */
  readonly capital: number | null;
  /** levelised money for a kWh of heat, the fuel alone; null where it has no price */
  readonly fuelCost: number | null;
  /** levelised money for a kWh of heat with the heater bought and bought again; null where either has no price */
  readonly costOfHeat: number | null;
  /** levelised money for an hour below the crop's limit avoided; null where open or there is none */
  readonly costOfHour: number | null;
  /** ids of prices that are missing */
  readonly missing: readonly string[];
}

/** The other ways. */
export interface OtherWays {
  /** the house used otherwise, the cheapest kWh first */
  readonly uses: readonly Alternative[];
  /** the store with a plate collector, or without the one it has; none where no plate suits its flow */
  readonly stores: readonly StoreWay[];
  /** a heater alone by fuel, in the order of the table of fuels */
  readonly fuels: readonly FuelWay[];
  /** money that a kWh of heat is worth over the years; null where it has no price */
  readonly heatWorth: number | null;
  /** currency of the prices; null without a list */
  readonly currency: string | null;
}

/** What they are found from. */
export interface OtherWaysQuestion {
  /** the store's request, whose house is changed */
  readonly request: StoreRequest;
  /** what the worth chapter is computed from */
  readonly worth: WorthRequest;
}

/** Runs the house used otherwise through the same year as the measures, fan always off. */
export function* otherWaySteps(question: OtherWaysQuestion): Steps<OtherWays> {
  const { request, worth } = question;
  const uses = houseUses(request.houseInputs);
  const asItIs = yield* asItIsYears(request);
  const requests = uses.map(({ inputs }) => ({ ...request, houseInputs: inputs }));
  const years = yield* likeYears(asItIs, requests, ["free", "held"]);
  const limit = findCrop(request.houseInputs.crop).killingLimit;
  const { free, held } = asItIs.years;
  const demand = kilowattHours(held.ledger.heater);
  const hours = hoursBelow(free.year.airTemperature, limit);
  const { parts } = worthMoney(worth);
  const rows = uses.map(({ id, name, change, work, cropWarmer, cropSeason }, k) => {
    const days = seasonDays(cropSeason);
    const air = years[k]!.free!.year.airTemperature
      .filter((_, hour) => days[Math.floor(hour / 24)] === 1);
    return measureAlternative(
      {
        name,
        change,
        saved: demand - kilowattHours(years[k]!.held!.ledger.heater),
        coldestHourGain: min(air)! + cropWarmer - min(free.year.airTemperature)!,
        cropHoursAvoided: hours - hoursBelow(air, limit - cropWarmer),
        work: { id, ...work },
      },
      demand,
      worth.inputs.prices,
      parts,
    );
  });
  const stores = yield* storeWaySteps(request, worth, asItIs);
  const place = ({ costOfHeat }: Alternative) => costOfHeat ?? Infinity;
  return {
    uses: rows.toSorted((a, b) => place(a) < place(b) ? -1 : +(place(a) > place(b))),
    stores,
    fuels: fuelWays(worth.inputs, demand, hours),
    heatWorth: parts === null ? null : heatWorth(parts),
    currency: worth.inputs.prices?.currency ?? null,
  };
}

/** The other ways, all done here. */
export function otherWays(question: OtherWaysQuestion): OtherWays {
  return alone(otherWaySteps(question));
}

/**
 * What heat costs from a heater alone, fuel by fuel. The study's own efficiency holds for its own
 * fuel, that of the table for the others.
 *
 * @param inputs prices and terms
 * @param demand kWh a year of heat, above 0
 * @param hours h a year below the crop's limit without a heater
 */
export function fuelWays(
  inputs: WorthInputs,
  demand: number,
  hours: number,
): readonly FuelWay[] {
  return FUELS.map((fuel) => fuelWay(fuel, inputs, { demand, hours }));
}

function fuelWay(
  fuel: Fuel,
  inputs: WorthInputs,
  { demand, hours }: { readonly demand: number; readonly hours: number },
): FuelWay {
  const { prices, discountRate: rate, years } = inputs;
  const electric = fuel.carbon === null;
  const [id, unit] = electric ? ["electricity", "kWh"] : [`fuel:${fuel.id}`, fuel.unit];
  const own = fuel.id === inputs.fuel;
  const bought = prices && findPrice(prices, id, unit);
  const heater = prices && findPrice(prices, `heater:${fuel.id}`, "pieces");
  const missing = [...(bought ? [] : [id]), ...(heater ? [] : [`heater:${fuel.id}`])];
  const row = { fuel: fuel.name, own, capital: heater?.price ?? null, missing };
  if (!bought) return { ...row, fuelCost: null, costOfHeat: null, costOfHour: null };
  const terms = { rate, years };
  const yearly = [{
    name: fuel.name,
    amount: demand * bought.price /
      (fuel.heatingValue * (own ? inputs.efficiency : fuel.efficiency)),
    escalation: electric ? inputs.electricityEscalation : inputs.fuelEscalation,
  }];
  const burnt = { initial: 0, replacements: [], residual: 0, yearly };
  const fuelCost = levelisedCost(burnt, demand, terms);
  if (!heater) return { ...row, fuelCost, costOfHeat: null, costOfHour: null };
  const worn = wearOut([{ name: "heater", cost: heater.price, life: heater.life }], years);
  const plan = { initial: heater.price, ...worn, yearly };
  return {
    ...row,
    fuelCost,
    costOfHeat: levelisedCost(plan, demand, terms),
    costOfHour: levelisedCost(plan, hours, terms),
  };
}
