/** An invented small store for the tests: weather by formula, house, tubes and fan by hand. */
import type { ClimateYear } from "../../lib/climate/types.ts";
import type { HouseInputs } from "../../lib/house/types.ts";
import { fitWave, soilProperties } from "../../lib/soil/mod.ts";
import type { SoilInputs } from "../../lib/soil/types.ts";
import type { StoreRequest } from "../../lib/store/site.ts";
import type { StoreInputs } from "../../lib/store/types.ts";
import type { TubesInputs } from "../../lib/tubes/types.ts";
import { DEFAULTS } from "../harness/defaults.ts";

/** A year by formula: daily and annual wave, clear and dull spells of five days. */
export function formulaClimate(
  options: { mean?: number; swing?: number; sun?: number } = {},
): ClimateYear {
  const { mean = 2.5, swing = 18, sun = 1 } = options;
  const series = (of: (hour: number, day: number) => number) =>
    Float64Array.from({ length: 8760 }, (_, hour) => of(hour, hour / 24));
  const clearness = (day: number) => 0.55 + 0.4 * Math.sin(2 * Math.PI * Math.floor(day) / 5.3);
  const height = (hour: number, day: number) => {
    const declination = 0.409 * Math.sin(2 * Math.PI * (day - 80) / 365);
    const angle = 2 * Math.PI * ((hour % 24) + 0.5 - 12) / 24;
    const latitude = 49.6 * Math.PI / 180;
    return Math.max(
      0,
      Math.sin(latitude) * Math.sin(declination) +
        Math.cos(latitude) * Math.cos(declination) * Math.cos(angle),
    );
  };
  const global = series((hour, day) => sun * 950 * height(hour, day) * clearness(day));
  const diffuse = series((hour, day) => global[hour]! * (0.95 - 0.7 * clearness(day) ** 2));
  return {
    place: { name: "Aldersett", latitude: 49.6, longitude: -101.3, elevation: 560, timeZone: -6 },
    source: "formula",
    layout: "normals",
    dryBulb: series((hour, day) =>
      mean - swing * Math.cos(2 * Math.PI * (day - 18) / 365) +
      5 * Math.cos(2 * Math.PI * (hour - 15) / 24) + 5 * Math.sin(2 * Math.PI * day / 11)
    ),
    relativeHumidity: series(() => 0.72),
    globalHorizontal: global,
    directNormal: series((hour, day) =>
      height(hour, day) > 0.05 ? (global[hour]! - diffuse[hour]!) / height(hour, day) : 0
    ),
    diffuseHorizontal: diffuse,
    windSpeed: series((hour) => 3 + 1.5 * Math.sin(hour / 17)),
    pressure: series(() => 94800),
    skyLongwave: null,
    notices: [],
  };
}

/** Loam, moist. */
export const SOIL_INPUTS: SoilInputs = {
  ...DEFAULTS.soil,
  texture: "loam",
  dryDensity: 1450,
  moisture: 0.25,
  quartz: 0.4,
  measuredConductivity: null,
  waterTableDepth: null,
  snowDepth: 0.2,
};

/** Gable house with a curtain, free running. */
export const HOUSE_INPUTS: HouseInputs = {
  ...DEFAULTS.house,
  shape: "gable",
  length: 12,
  width: 6,
  eaveHeight: 1.8,
  ridgeHeight: 3.6,
  facing: 180,
  glazing: "double-glass",
  northWall: 0.3,
  kneeWallHeight: 0.6,
  kneeWall: 0.3,
  endWalls: 0.4,
  northRoof: 0.25,
  leakage: 0.5,
  leakageWind: 0.05,
  curtain: { resistance: 0.5, coverage: 0.95, edgeLeak: 0.1, closeBelow: 20, closeBelowOutside: 9 },
  edgeInsulation: 1.8,
  edgeInsulationDepth: 0.6,
  edgeInsulationWing: 0,
  northEarthHeight: 0,
  footingDepth: 0.6,
  waterVolume: 0,
  waterSurface: 0,
  masonryVolume: 0,
  masonrySurface: 0,
  massSunView: 0.5,
  summerShade: 0,
  summerShadeAbove: 15,
  crop: "lettuce",
  leafArea: 1.5,
  heatSetPoint: 4,
  heatSetPointDay: 4,
  ventSetPoint: 28,
  ventCapacity: 30,
  purgeHumidity: 0.95,
  heaterPower: 0,
};

/** Two layers of ten tubes. */
export const TUBES_INPUTS: TubesInputs = {
  ...DEFAULTS.tubes,
  tube: "corrugated-100",
  count: 20,
  length: 11,
  spacing: 0.45,
  layers: 2,
  layerSpacing: 0.5,
  depth: 0.6,
  airFlow: 0.45,
  slope: 0.01,
  direction: "along",
  extraLosses: 1,
};

/** Thresholds as a builder would set them. */
export const STORE_INPUTS: StoreInputs = {
  ...DEFAULTS.store,
  chargeStart: 5,
  chargeStop: 2,
  chargeAbove: 20,
  dischargeStart: 3,
  dischargeStop: 1.5,
  dischargeBelow: 8,
  minimumRun: 900,
  humidityLockOut: 0.98,
  stratification: 3,
  mixingFlow: 0,
  reverse: true,
  slices: 8,
  spinUpYears: 3,
  outsideSoil: 12.5,
  meshDepth: 12,
};

function tubesResult(inputs: TubesInputs): StoreRequest["tubes"] {
  const perLayer = inputs.count / inputs.layers;
  return {
    product: {
      id: inputs.tube,
      name: "corrugated drain tube",
      insideDiameter: 0.1,
      outsideDiameter: 0.116,
      wall: "corrugated",
      manning: 0.015,
      roughness: null,
      perforated: true,
      source: "invented",
    },
    count: inputs.count,
    length: inputs.length,
    diameter: 0.1,
    positions: Array.from({ length: inputs.count }, (_, k) => ({
      x: ((k % perLayer) - (perLayer - 1) / 2) * inputs.spacing,
      depth: inputs.depth + Math.floor(k / perLayer) * inputs.layerSpacing,
    })),
    filmCoefficient: 14,
  };
}

/** All that the store chapter takes; parts may be replaced. */
export function standInRequest(
  change: {
    climate?: ClimateYear;
    store?: Partial<StoreInputs>;
    house?: Partial<HouseInputs>;
    soil?: Partial<SoilInputs>;
    tubes?: Partial<TubesInputs>;
    shares?: number[];
  } = {},
): StoreRequest {
  const climate = change.climate ?? formulaClimate();
  const tubesInputs = { ...TUBES_INPUTS, ...change.tubes };
  const tubes = tubesResult(tubesInputs);
  const soilInputs = { ...SOIL_INPUTS, ...change.soil };
  const properties = soilProperties(soilInputs);
  return {
    inputs: { ...STORE_INPUTS, ...change.store },
    climate,
    soilInputs,
    soil: { properties, wave: fitWave(climate, properties, soilInputs.snowDepth) },
    houseInputs: { ...HOUSE_INPUTS, ...change.house },
    tubesInputs,
    tubes,
    headers: { shares: Float64Array.from(change.shares ?? tubes.positions.map(() => 1)) },
    fan: { airFlow: tubesInputs.airFlow, power: 110, density: 1.15 },
  };
}
