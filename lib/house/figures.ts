/** Figures of the house chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import { dayFigure, freezeFigure } from "../climate/figures.ts";
import type { CropYear } from "./crop/crop_year.ts";
import type { HouseResult } from "./types.ts";

/** Words for the house chapter's own year in labels, tables and charts. */
export const SCREENING_YEAR = "screening year, floor as separate columns";

/** Figures that the store chapter does not refine. */
export function houseFigures(house: HouseResult): readonly FigureRow[] {
  return [
    numberFigure("house.floorArea", house.geometry.floorArea, "m2", "floor area"),
    numberFigure(
      "house.lossCoefficient",
      house.lossCoefficient,
      "W/K",
      "heat loss coefficient of the house",
    ),
    numberFigure(
      "house.peakHeatLoss",
      house.peakHeatLoss,
      "W",
      "heat loss at the design temperature",
    ),
  ];
}

/** The house without a store, from the screening year: for runs that do not reach the store. */
export function screeningFigures(house: HouseResult): readonly FigureRow[] {
  return noStoreFigures(house, SCREENING_YEAR);
}

/** What a year says of the house without a store. */
export interface YearWithoutStore {
  /** kWh to hold the heating set point */
  readonly heatDemand: number;
  /** degC in the free-running house */
  readonly coldestHour: number;
  /** the free-running house against freezing and the crop's limits */
  readonly crop: CropYear;
  /** kWh that leave the soil for the ground and air outdoors, free running */
  readonly edgeLoss: number;
}

/**
 * The figures of the house without a store; every year that gives them gives them under these keys.
 *
 * @param year the year they are of
 * @param which which year that is, in words
 */
export function noStoreFigures(year: YearWithoutStore, which: string): readonly FigureRow[] {
  const { heatDemand, coldestHour, crop, edgeLoss } = year;
  const unheated = `in the house, unheated, no store (${which})`;
  const hours = (key: string, value: number, limit: string) =>
    numberFigure(
      `house.hoursBelow${key}NoStore`,
      value,
      "h",
      `hours a year below ${limit} ${unheated}`,
    );
  return [
    numberFigure(
      "house.heatDemand",
      heatDemand,
      "kWh",
      `annual heat to hold the heating set point, no store (${which})`,
    ),
    numberFigure("house.coldestHourNoStore", coldestHour, "degC", `coldest hour ${unheated}`),
    hours("Freezing", crop.freezing.hours, "0 degC (32 degF)"),
    freezeFigure("house.firstFreezeNoStore", crop.freezing.first, unheated),
    dayFigure("house.lastFreezeNoStore", crop.freezing.last, `last frost ${unheated}`),
    hours("CropLimit", crop.killing.hours, "the crop's killing limit"),
    hours("CropDamage", crop.damage.hours, "the crop's damage limit"),
    numberFigure(
      "house.edgeLoss",
      edgeLoss,
      "kWh",
      `annual heat lost from the floor soil to ground and air outdoors, unheated, no store (${which})`,
    ),
  ];
}
