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
      "heat charged into the soil through the tubes in a year",
    ),
    numberFigure(
      "store.heatOut",
      store.heatOut,
      "kWh",
      "heat discharged through the tubes in a year",
    ),
    numberFigure("store.latentIn", store.latentIn, "kWh", "latent part of the heat charged"),
    numberFigure("store.latentOut", store.latentOut, "kWh", "latent part of the heat discharged"),
    numberFigure(
      "store.recovery",
      store.recovery,
      "1",
      "recovery: heat discharged over heat charged",
    ),
    numberFigure(
      "store.cop",
      store.cop,
      "1",
      "coefficient of performance: heat discharged over fan electricity",
    ),
    numberFigure(
      "store.carriedAcrossSeasons",
      store.carriedAcrossSeasons,
      "1",
      "share of the heat discharged that was charged in an earlier quarter",
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
      "annual heat to hold the heating set point, with the store",
    ),
    numberFigure(
      "store.backupHeatNoFan",
      store.backupHeatNoFan,
      "kWh",
      "the same with the fan always off",
    ),
    numberFigure(
      "store.balanceResidual",
      store.balanceResidual,
      "1",
      "residual of the heat balance over the heat moved",
    ),
    freezeFigure("store.firstFreeze", store.firstFreeze, "in the house with the store"),
    numberFigure("fan.energyPerYear", store.fanEnergy, "kWh", "annual fan electricity"),
  ];
}
