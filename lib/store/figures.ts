/** Figures of the store chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import { freezeFigure } from "../climate/figures.ts";
import type { StoreResult } from "./types.ts";

/** Every figure of the chapter. */
export function storeFigures(store: StoreResult): readonly FigureRow[] {
  return [
    numberFigure(
      "store.heatIn",
      store.heatIn,
      "kWh",
      "heat put into the soil through the tubes in a year",
    ),
    numberFigure(
      "store.heatOut",
      store.heatOut,
      "kWh",
      "heat taken out through the tubes in a year",
    ),
    numberFigure("store.latentIn", store.latentIn, "kWh", "latent part of the heat put in"),
    numberFigure("store.latentOut", store.latentOut, "kWh", "latent part of the heat taken out"),
    numberFigure("store.recovery", store.recovery, "1", "heat taken out over heat put in"),
    numberFigure("store.cop", store.cop, "1", "heat taken out over the electricity of the fans"),
    numberFigure(
      "store.carriedAcrossSeasons",
      store.carriedAcrossSeasons,
      "1",
      "share of the heat taken out that was put in during an earlier quarter",
    ),
    numberFigure(
      "store.coldestHour",
      store.coldestHour,
      "degC",
      "coldest hour in the house with the store",
    ),
    numberFigure(
      "store.hoursBelowFreezing",
      store.hoursBelowFreezing,
      "h",
      "hours a year below 0 degC in the house with the store",
    ),
    numberFigure(
      "store.backupHeat",
      store.backupHeat,
      "kWh",
      "heat a year to hold the heating set point, with the store",
    ),
    numberFigure(
      "store.backupHeatNoFan",
      store.backupHeatNoFan,
      "kWh",
      "the same with the fan never on",
    ),
    numberFigure(
      "store.balanceResidual",
      store.balanceResidual,
      "1",
      "what the energy ledger leaves unexplained, over the heat moved",
    ),
    freezeFigure("store.firstFreeze", store.firstFreeze, "in the house with the store"),
    numberFigure("fan.energyPerYear", store.fanEnergy, "kWh", "electricity of the fans in a year"),
  ];
}
