/** Figures of the store chapter. @module */
import { type FigureRow, numberFigure } from "../basics/figures.ts";
import { dayFigure, freezeFigure } from "../climate/figures.ts";
import { noStoreFigures } from "../house/mod.ts";
import { NO_STORE_YEAR } from "./baseline.ts";
import type { StoreResult } from "./types.ts";

const NOTHING_IN = "no heat is charged";
const NOTHING_OUT = "no heat is discharged";
const FAN_RESTS = "the fan never runs";

/** Every figure of the chapter, and those of the house without a store on its settled ground. */
export function storeFigures(store: StoreResult): readonly FigureRow[] {
  return [
    numberFigure(
      "store.savedHeat",
      store.savedHeat,
      "kWh",
      "annual heat saved by the store: back-up heat with the fan always off minus that with the store",
    ),
    numberFigure(
      "store.savedHeatPerFanEnergy",
      store.savedHeatPerFanEnergy,
      "1",
      "heat saved over fan electricity",
      FAN_RESTS,
    ),
    numberFigure(
      "store.taggedReturn",
      store.taggedReturn,
      "1",
      "share of the heat charged that is discharged again, by tags",
      NOTHING_IN,
    ),
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
      "gross recovery: heat discharged over heat charged",
      NOTHING_IN,
    ),
    numberFigure(
      "store.cop",
      store.cop,
      "1",
      "gross coefficient of performance: heat discharged over fan electricity",
      FAN_RESTS,
    ),
    numberFigure(
      "store.carriedAcrossSeasons",
      store.carriedAcrossSeasons,
      "1",
      "share of the heat discharged that was charged in an earlier quarter",
      NOTHING_OUT,
    ),
    numberFigure(
      "store.coldestHour",
      store.coldestHour,
      "degC",
      "coldest hour in the house with the store",
    ),
    numberFigure(
      "store.hoursBelowFreezing",
      store.crop.freezing.hours,
      "h",
      "hours a year below 0 degC (32 degF) in the house with the store",
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
      "annual heat to hold the heating set point, fan always off",
    ),
    numberFigure(
      "store.balanceResidual",
      store.balanceResidual,
      "1",
      "residual of the heat balance over the heat moved",
    ),
    freezeFigure("store.firstFreeze", store.crop.freezing.first, "in the house with the store"),
    dayFigure(
      "store.lastFreeze",
      store.crop.freezing.last,
      "last frost in the house with the store",
    ),
    numberFigure(
      "store.hoursBelowCropLimit",
      store.crop.killing.hours,
      "h",
      "hours a year below the crop's killing limit in the house with the store",
    ),
    numberFigure(
      "store.hoursBelowCropDamage",
      store.crop.damage.hours,
      "h",
      "hours a year below the crop's damage limit in the house with the store",
    ),
    numberFigure(
      "store.edgeLoss",
      store.edgeLoss,
      "kWh",
      "annual heat lost from the soil to ground and air outdoors, with the store",
    ),
    numberFigure(
      "store.dampHours",
      store.damp.humid,
      "h",
      "hours a year with air above 90 % humidity in the house with the store",
    ),
    numberFigure(
      "store.drippingHours",
      store.damp.dripping,
      "h",
      "hours a year in which the cover drips (over 10 g/h per m2 of floor), with the store",
    ),
    numberFigure("fan.energyPerYear", store.fanEnergy, "kWh", "annual fan electricity"),
    numberFigure(
      "fan.energyPerHeatedYear",
      store.backupFanEnergy,
      "kWh",
      "annual fan electricity where the heater keeps the set point",
    ),
    ...noStoreFigures({
      heatDemand: store.backupHeatNoFan,
      coldestHour: store.coldestHourNoFan,
      crop: store.cropNoFan,
      edgeLoss: store.edgeLossNoFan,
    }, NO_STORE_YEAR),
  ];
}
