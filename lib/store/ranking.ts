/** "Do this first": what each improvement of the house brings, and what the store brings. @module */
import { min } from "d3-array";
import { alone, hoursBelow, kilowattHours, ratio, type Steps } from "../basics/mod.ts";
import { findCrop, type HouseMeasure, houseMeasures, type MeasureWork } from "../house/mod.ts";
import { asItIsYears, type HouseYears, likeYears } from "./like_houses.ts";
import type { StoreRequest } from "./site.ts";

/** What a settled year says of a house. */
export interface RankedYear {
  /** kWh a year to hold the heating set point */
  readonly heatDemand: number;
  /** degC, coldest hour without heater */
  readonly coldestHour: number;
  /** hours below 0 degC without heater */
  readonly hoursBelowFreezing: number;
  /** hours below the crop's killing limit without heater */
  readonly hoursBelowCropLimit: number;
}

/** One improvement and what a year with it says. */
export interface RankedMeasure extends RankedYear {
  /** short name */
  readonly name: string;
  /** the house as it is, a change of the house, or the store; the fan runs in the last alone */
  readonly kind: "present" | "house" | "store";
  /** what was changed, in words and numbers */
  readonly change: string;
  /** id of a change of the house in a price list, and how much of it is built; null for the rest */
  readonly work: (MeasureWork & { readonly id: string }) | null;
  /** kWh a year less than the house as it is */
  readonly saved: number;
  /** saved over the demand of the house as it is, 0 to 1; null where it has none */
  readonly savedShare: number | null;
  /** K that the coldest hour gains */
  readonly coldestHourGain: number;
  /** hours below the crop's killing limit less than in the house as it is */
  readonly cropHoursAvoided: number;
}

/** The store chapter's own years. */
export interface RankedKnown {
  /** the house as it is, fan always off */
  readonly asItIs: RankedYear;
  /** the house as it is, with the store */
  readonly store: RankedYear;
}

/**
 * Runs the settled year with the fan always off again with each improvement alone, and puts the one
 * that saves most heat first. The first row is the house as it is; the store stands among the rest.
 * All years are those of the store chapter's ground, so that measures and store compare; those of
 * changed houses settle from it.
 *
 * @param request the store's request
 * @param known the store chapter's own years; without them the house as it is is run, and the store
 * left out
 * @param measures improvements to try; the usual ones unless given
 * @returns heat demand of each in kWh a year and what it saves, the house as it is first
 */
export function rankMeasures(
  request: StoreRequest,
  known?: RankedKnown,
  measures: readonly HouseMeasure[] = houseMeasures(request.houseInputs),
): readonly RankedMeasure[] {
  return alone(rankingSteps(request, known, measures));
}

/** The ranking in pieces. Parameters and result are those of {@link rankMeasures}. */
export function* rankingSteps(
  request: StoreRequest,
  known?: RankedKnown,
  measures: readonly HouseMeasure[] = houseMeasures(request.houseInputs),
): Steps<readonly RankedMeasure[]> {
  const asItIsHouse = yield* asItIsYears(request);
  const changed = measures.map(({ inputs }) => ({ ...request, houseInputs: inputs }));
  const found = (yield* likeYears(asItIsHouse, changed, ["free", "held"])).map((years) =>
    rankedYear(years as HouseYears, request)
  );
  const asItIs = known?.asItIs ?? rankedYear(asItIsHouse.years, request);
  const row = (
    name: string,
    kind: RankedMeasure["kind"],
    change: string,
    year: RankedYear,
    work: RankedMeasure["work"] = null,
  ): RankedMeasure => {
    const saved = asItIs.heatDemand - year.heatDemand;
    return {
      name,
      kind,
      change,
      work,
      ...year,
      saved,
      savedShare: ratio(saved, asItIs.heatDemand),
      coldestHourGain: year.coldestHour - asItIs.coldestHour,
      cropHoursAvoided: asItIs.hoursBelowCropLimit - year.hoursBelowCropLimit,
    };
  };
  const rows = measures.map(({ id, work, name, change }, k) =>
    row(name, "house", change, found[k]!, { id, ...work })
  );
  if (known !== undefined) rows.push(row("heat store", "store", "as planned", known.store));
  return [
    row("as it is", "present", "fan always off", asItIs),
    ...rows.toSorted((a, b) => b.saved - a.saved),
  ];
}

function rankedYear({ free, held }: HouseYears, { houseInputs }: StoreRequest): RankedYear {
  const air = free.year.airTemperature;
  return {
    heatDemand: kilowattHours(held.ledger.heater),
    coldestHour: min(air)!,
    hoursBelowFreezing: hoursBelow(air, 0),
    hoursBelowCropLimit: hoursBelow(air, findCrop(houseInputs.crop).killingLimit),
  };
}
