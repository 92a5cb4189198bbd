/** A small house and simple years for the house tests; numbers of our own, no check values. */
import { STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../lib/basics/mod.ts";
import type { ClimateYear } from "../../lib/climate/types.ts";
import type { HouseBoundary, HouseInputs } from "../../lib/house/mod.ts";
import type { SoilResult } from "../../lib/soil/mod.ts";
import { DEFAULTS } from "../harness/defaults.ts";

export const HOUSE: HouseInputs = {
  ...DEFAULTS.house,
  shape: "gable",
  length: 24,
  width: 8,
  eaveHeight: 2,
  ridgeHeight: 4,
  facing: 180,
  glazing: "twin-wall-8mm",
  northWall: 0.25,
  kneeWallHeight: 0.6,
  kneeWall: 0.4,
  endWalls: "glazed",
  northRoof: 0.25,
  leakage: 0.5,
  leakageWind: 0.08,
  curtain: {
    resistance: 0.35,
    coverage: 0.95,
    edgeLeak: 0.1,
    closeBelow: 20,
    closeBelowOutside: 7,
  },
  edgeInsulation: 1.8,
  edgeInsulationDepth: 0.6,
  edgeInsulationWing: 0,
  northEarthHeight: 0,
  footingDepth: 1,
  waterVolume: 2,
  waterSurface: 20,
  masonryVolume: 0,
  masonrySurface: 0,
  massSunView: 0.5,
  wallAbsorptance: 0.6,
  lightToAir: null,
  summerShade: 0,
  summerShadeAbove: 15,
  crop: "spinach",
  leafArea: 1.5,
  heatSetPoint: 2,
  heatSetPointDay: 2,
  ventSetPoint: 26,
  ventCapacity: 30,
  purgeHumidity: 0.9,
  heaterPower: 0,
};

const PLACE = {
  name: "Aldersett, Northmark",
  latitude: 49.6,
  longitude: -101.3,
  elevation: 560,
  timeZone: -6,
};

export interface SimpleYear {
  temperature: (hour: number) => number;
  humidity?: number;
  wind?: number;
  /** share of a half-sine day of 700 W/m² between 7 and 17 h */
  sun?: number;
  /** sky as cold as the air unless given, W/m² */
  longwave?: (hour: number) => number;
}

/** A year from a rule, no randomness. */
export function simpleYear(rule: SimpleYear): ClimateYear {
  const series = (value: (hour: number) => number) =>
    Float64Array.from({ length: 8760 }, (_, hour) => value(hour));
  const global = series((hour) => {
    const day = Math.sin(Math.PI * ((hour % 24) + 0.5 - 7) / 10);
    return (rule.sun ?? 0) * (hour % 24 >= 7 && hour % 24 < 17 ? 700 * day : 0);
  });
  const black = (hour: number) => STEFAN_BOLTZMANN * (rule.temperature(hour) + ZERO_CELSIUS) ** 4;
  return {
    place: PLACE,
    source: "rule of a test",
    layout: "columns",
    dryBulb: series(rule.temperature),
    relativeHumidity: series(() => rule.humidity ?? 0.7),
    globalHorizontal: global,
    directNormal: series(() => 0),
    diffuseHorizontal: global,
    windSpeed: series(() => rule.wind ?? 3),
    pressure: series(() => 95000),
    skyLongwave: series(rule.longwave ?? black),
    notices: [],
  };
}

/** A soil of 1.5 W/(m K), its wave around a mean. */
export function simpleSoil(mean: number, amplitude = 0): Pick<SoilResult, "properties" | "wave"> {
  const diffusivity = 1.5 / 2.2e6;
  return {
    properties: {
      conductivity: 1.5,
      frozenConductivity: 1.9,
      heatCapacity: 2.2e6,
      frozenHeatCapacity: 1.8e6,
      diffusivity,
      latentHeat: 8e7,
      conductivityRange: [1, 2],
      porosity: 0.45,
      saturation: 0.6,
      freezingRange: 0.5,
    } as SoilResult["properties"],
    wave: { mean, amplitude, minimumDay: 30, diffusivity },
  };
}

/** No heat into the floor, no tubes. */
export const NO_FLOOR: HouseBoundary = {
  floorConductance: 0,
  floorTemperature: 10,
  storeHeat: 0,
  storeSlope: 0,
  storeReference: 0,
  storeVapour: 0,
};
