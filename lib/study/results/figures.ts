/** The figures of a run, one flat list with units and labels. @module */
import { dateAfterMidsummer } from "./dates.ts";
import type { ChapterResults } from "../run/run.ts";
import type { Figure, Figures } from "../types.ts";

type Rows = readonly (readonly [key: string, value: number, unit: string, label: string])[];

function climateRows({ climate }: ChapterResults): Rows {
  const week = climate.coldSpells.find((spell) => spell.length === 7);
  return [
    ["climate.meanTemperature", climate.meanTemperature, "degC", "mean outdoor temperature"],
    ["climate.coldestHour", climate.coldestHour, "degC", "coldest hour outdoors"],
    ["climate.design99_6", climate.design99_6, "degC", "temperature exceeded 99.6 % of the year"],
    ["climate.design99", climate.design99, "degC", "temperature exceeded 99 % of the year"],
    [
      "climate.heatingDegreeDays18",
      climate.heatingDegreeDays18,
      "K d",
      "heating degree-days below 18 degC",
    ],
    [
      "climate.heatingDegreeDays18_3",
      climate.heatingDegreeDays18_3,
      "K d",
      "heating degree-days below 18.3 degC (65 degF), from hours",
    ],
    [
      "climate.worstWeekTemperature",
      week?.meanTemperature ?? NaN,
      "degC",
      "mean temperature of the worst cold and dull week",
    ],
    [
      "climate.worstWeekRadiation",
      week?.globalRadiation ?? NaN,
      "kWh/(m2 d)",
      "radiation on the horizontal a day in that week",
    ],
    [
      "climate.globalRadiation",
      climate.globalRadiation,
      "kWh/m2",
      "global radiation on the horizontal in a year",
    ],
  ];
}

function soilRows({ soil }: ChapterResults): Rows {
  const { properties, wave } = soil;
  return [
    ["soil.meanTemperature", wave.mean, "degC", "mean temperature of the undisturbed ground"],
    ["soil.surfaceAmplitude", wave.amplitude, "K", "yearly amplitude at the ground's surface"],
    ["soil.diffusivity", properties.diffusivity, "m2/s", "thermal diffusivity of the soil"],
    ["soil.conductivity", properties.conductivity, "W/(m K)", "thermal conductivity of the soil"],
    [
      "soil.conductivityLow",
      properties.conductivityRange[0],
      "W/(m K)",
      "lowest plausible thermal conductivity of the soil",
    ],
    [
      "soil.conductivityHigh",
      properties.conductivityRange[1],
      "W/(m K)",
      "highest plausible thermal conductivity of the soil",
    ],
    ["soil.frostDepth", soil.frostDepth, "m", "deepest frost in the undisturbed ground"],
    [
      "soil.temperatureAtTubeDepthMin",
      soil.temperatureAtTubeDepthMin,
      "degC",
      "lowest temperature of the undisturbed ground at the depth of the tubes",
    ],
    [
      "soil.temperatureAtTubeDepthMax",
      soil.temperatureAtTubeDepthMax,
      "degC",
      "highest temperature of the undisturbed ground at the depth of the tubes",
    ],
  ];
}

function houseRows({ house }: ChapterResults): Rows {
  return [
    ["house.floorArea", house.geometry.floorArea, "m2", "floor area"],
    ["house.lossCoefficient", house.lossCoefficient, "W/K", "heat loss coefficient of the house"],
    ["house.peakHeatLoss", house.peakHeatLoss, "W", "heat loss at the design temperature"],
    [
      "house.heatDemand",
      house.heatDemand,
      "kWh",
      "heat a year to hold the heating set point, without a store",
    ],
    [
      "house.coldestHourNoStore",
      house.coldestHourNoStore,
      "degC",
      "coldest hour in the house, no heater, no store",
    ],
    [
      "house.hoursBelowFreezingNoStore",
      house.hoursBelowFreezingNoStore,
      "h",
      "hours a year below 0 degC in the house, no heater, no store",
    ],
  ];
}

function tubesRows({ tubes }: ChapterResults): Rows {
  return [
    ["tubes.count", tubes.count, "1", "number of tubes"],
    ["tubes.length", tubes.length, "m", "length of one tube"],
    ["tubes.totalLength", tubes.totalLength, "m", "length of all tubes"],
    ["tubes.diameter", tubes.diameter, "m", "inside diameter of the tubes"],
    ["tubes.airSpeed", tubes.airSpeed, "m/s", "air speed in the tubes at the design flow"],
    ["tubes.flowPerTube", tubes.flowPerTube, "m3/s", "air flow of one tube at the design flow"],
    ["tubes.pressureDrop", tubes.pressureDrop, "Pa", "pressure drop of one tube, ends included"],
    ["tubes.effectiveness", tubes.effectiveness, "1", "effectiveness of one tube, dry"],
  ];
}

function headersRows({ headers }: ChapterResults): Rows {
  return [
    ["headers.diameter", headers.diameter, "m", "inside diameter of the supply header"],
    ["headers.areaRatio", headers.areaRatio, "1", "cross-section of the tubes over the header's"],
    ["headers.flowMin", headers.flowMin, "1", "least tube flow over the mean"],
    ["headers.flowMax", headers.flowMax, "1", "greatest tube flow over the mean"],
    ["headers.unevenness", headers.unevenness, "1", "coefficient of variation of the tube flows"],
  ];
}

function fanRows({ fan, store }: ChapterResults): Rows {
  return [
    ["fan.airFlow", fan.airFlow, "m3/s", "air flow at the operating point"],
    ["fan.pressure", fan.pressure, "Pa", "fan static pressure at the operating point"],
    ["fan.power", fan.power, "W", "electric power of all fans"],
    ["fan.energyPerYear", store.fanEnergy, "kWh", "electricity of the fans in a year"],
    ["fan.specificPower", fan.specificPower, "W/(m3/s)", "specific fan power"],
  ];
}

function storeRows({ store }: ChapterResults): Rows {
  return [
    ["store.heatIn", store.heatIn, "kWh", "heat put into the soil through the tubes in a year"],
    ["store.heatOut", store.heatOut, "kWh", "heat taken out through the tubes in a year"],
    ["store.latentIn", store.latentIn, "kWh", "latent part of the heat put in"],
    ["store.latentOut", store.latentOut, "kWh", "latent part of the heat taken out"],
    ["store.recovery", store.recovery, "1", "heat taken out over heat put in"],
    ["store.cop", store.cop, "1", "heat taken out over the electricity of the fans"],
    [
      "store.carriedAcrossSeasons",
      store.carriedAcrossSeasons,
      "1",
      "share of the heat taken out that was put in during an earlier quarter",
    ],
    ["store.coldestHour", store.coldestHour, "degC", "coldest hour in the house with the store"],
    [
      "store.hoursBelowFreezing",
      store.hoursBelowFreezing,
      "h",
      "hours a year below 0 degC in the house with the store",
    ],
    [
      "store.backupHeat",
      store.backupHeat,
      "kWh",
      "heat a year to hold the heating set point, with the store",
    ],
    [
      "store.backupHeatNoFan",
      store.backupHeatNoFan,
      "kWh",
      "the same with the fan never on",
    ],
    [
      "store.balanceResidual",
      store.balanceResidual,
      "1",
      "what the energy ledger leaves unexplained, over the heat moved",
    ],
  ];
}

/** First frost after midsummer as a date, or null with the reason. */
function freezeFigure(hour: number | null, where: string): Figure {
  return hour === null
    ? { value: null, unit: "date", label: `first frost ${where}: it never freezes there` }
    : {
      value: dateAfterMidsummer(hour),
      unit: "date",
      label:
        `first frost ${where} after 1 July (a typical year has no number; its winter is written 2001 to 2002)`,
    };
}

/** Every figure of a run. */
export function studyFigures(results: ChapterResults): Figures {
  const rows = [
    climateRows,
    soilRows,
    houseRows,
    tubesRows,
    headersRows,
    fanRows,
    storeRows,
  ].flatMap((part) => part(results));
  const numbers = rows.map(([key, value, unit, label]): [string, Figure] => [
    key,
    Number.isFinite(value)
      ? { value, unit, label }
      : { value: null, unit, label: `${label}: there is none in this run` },
  ]);
  return Object.fromEntries([
    ...numbers,
    [
      "house.firstFreezeNoStore",
      freezeFigure(results.house.firstFreezeNoStore, "in the house, no heater, no store"),
    ],
    ["store.firstFreeze", freezeFigure(results.store.firstFreeze, "in the house with the store")],
  ]);
}
