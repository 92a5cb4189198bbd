/** Figures of the house chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import { dayFigure, freezeFigure } from "../climate/figures.ts";
import type { HouseResult } from "./types.ts";

/** Every figure of the chapter. */
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
    numberFigure(
      "house.heatDemand",
      house.heatDemand,
      "kWh",
      "annual heat to hold the heating set point, without a store",
    ),
    numberFigure(
      "house.coldestHourNoStore",
      house.coldestHourNoStore,
      "degC",
      "coldest hour in the house, unheated, no store",
    ),
    numberFigure(
      "house.hoursBelowFreezingNoStore",
      house.hoursBelowFreezingNoStore,
      "h",
      "hours a year below 0 degC in the house, unheated, no store",
    ),
    freezeFigure(
      "house.firstFreezeNoStore",
      house.firstFreezeNoStore,
      "in the house, unheated, no store",
    ),
    dayFigure(
      "house.lastFreezeNoStore",
      house.lastFreezeNoStore,
      "last frost in the house, unheated, no store",
    ),
    numberFigure(
      "house.hoursBelowCropLimitNoStore",
      house.cropNoStore.killing.hours,
      "h",
      "hours a year below the crop's killing limit in the house, unheated, no store",
    ),
    numberFigure(
      "house.hoursBelowCropDamageNoStore",
      house.cropNoStore.damage.hours,
      "h",
      "hours a year below the crop's damage limit in the house, unheated, no store",
    ),
    numberFigure(
      "house.edgeLoss",
      house.edgeLoss,
      "kWh",
      "annual heat lost from the floor soil to the ground outside, unheated, no store",
    ),
  ];
}
