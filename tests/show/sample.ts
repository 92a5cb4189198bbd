/** Made-up results that charts are drawn from in tests; no claim about any real house. */
import type { ClimateResult, ClimateYear } from "../../lib/climate/types.ts";
import { summariseFan } from "../../lib/fan/mod.ts";
import type { FanCurve, FanInputs, FanResult } from "../../lib/fan/types.ts";
import { summariseHeaders } from "../../lib/headers/mod.ts";
import type { HeadersResult } from "../../lib/headers/types.ts";
import { type RankedMeasure, summariseHouse } from "../../lib/house/mod.ts";
import { type LogCheck, logMeans } from "../../lib/measured/mod.ts";
import type { HouseResult, HouseYear } from "../../lib/house/types.ts";
import { findSoil, summariseSoil } from "../../lib/soil/mod.ts";
import type { SoilInputs, SoilResult } from "../../lib/soil/types.ts";
import {
  type ComparedVariant,
  firstSteps,
  type HouseWay,
  summariseStore,
  variantsCompared,
  waysCompared,
} from "../../lib/store/mod.ts";
import type { StoreResult } from "../../lib/store/types.ts";
import { summariseTubes } from "../../lib/tubes/mod.ts";
import type { TubesResult } from "../../lib/tubes/types.ts";
import { HOUSE } from "../house/fixtures.ts";

/** Fields the charts read; the others of the type may be missing. */
function made<T>(fields: object): T {
  return fields as T;
}

/** A year of hourly values from a formula. */
export function hourly(value: (hour: number) => number): Float64Array {
  return Float64Array.from({ length: 8760 }, (_, hour) => value(hour));
}

const season = (hour: number) => -Math.cos(2 * Math.PI * hour / 8760);
const daytime = (hour: number) => Math.max(0, -Math.cos(2 * Math.PI * (hour + 0.5) / 24));

export const outdoors = hourly((hour) => 2 + 18 * season(hour) + 5 * daytime(hour));
const radiation = hourly((hour) => (450 + 350 * season(hour)) * daytime(hour));
const zeros = hourly(() => 0);

export const climateYear = made<ClimateYear>({
  place: { name: "Sample", latitude: 50, longitude: 0, elevation: 0, timeZone: 0 },
  source: "made up",
  layout: "columns",
  dryBulb: outdoors,
  relativeHumidity: hourly(() => 0.7),
  globalHorizontal: radiation,
  directNormal: radiation,
  diffuseHorizontal: zeros,
  windSpeed: zeros,
  pressure: hourly(() => 101325),
  skyLongwave: null,
  notices: [],
});

export const climateResult = made<ClimateResult>({
  months: Array.from({ length: 12 }, (_, index) => ({
    month: index + 1,
    meanTemperature: -16 + 3 * index,
    minTemperature: -30 + 3 * index,
    maxTemperature: -5 + 3 * index,
    globalRadiation: 40 + 10 * index,
    diffuseRadiation: 16 + 4 * index,
    diffuseShare: 0.4,
    meanRelativeHumidity: 0.7,
    meanWindSpeed: 4,
    heatingDegreeDays18: 500,
  })),
  meanTemperature: 2.5,
  coldestHour: -33,
  warmestHour: 35,
  design99_6: -29,
  design99: -26,
  heatingDegreeDays18: 5900,
  globalRadiation: 1350,
  winterRadiation: 240,
  summerRadiation: 300,
  hoursBelow: [{ limit: 0, hours: 3000 }, { limit: 10, hours: 5000 }],
  coldSpells: [],
  notices: [],
});

const depths = [0, 0.3, 0.6, 1, 1.5, 2, 3, 5];
export const soilInputs: SoilInputs = {
  ...findSoil("loam"),
  measuredConductivity: null,
  waterTableDepth: 2.5,
  snowDepth: 0.2,
};
export const soilResult = summariseSoil(
  soilInputs,
  made<SoilResult>({
    properties: {
      conductivity: 1.3,
      frozenConductivity: 1.7,
      heatCapacity: 2.3e6,
      frozenHeatCapacity: 1.8e6,
      diffusivity: 5.6e-7,
      latentHeat: 6e7,
      conductivityRange: [1, 1.6],
      porosity: 0.45,
      saturation: 0.6,
    },
    wave: { mean: 5, amplitude: 14, minimumDay: 25, diffusivity: 5.6e-7 },
    frostDepth: 1.4,
    depths,
    monthly: Array.from(
      { length: 12 },
      (_, month) =>
        depths.map((depth) => 5 - 14 * Math.exp(-depth / 2) * Math.cos(month / 2 - depth / 2)),
    ),
    field: {
      depths,
      temperature: depths.map((depth) =>
        Float64Array.from(
          { length: 365 },
          (_, day) => 5 - 14 * Math.exp(-depth / 2) * Math.cos(day / 58 - depth / 2),
        )
      ),
    },
    tubeDepth: 0.9,
    temperatureAtTubeDepthMin: -3,
    temperatureAtTubeDepthMax: 13,
    climateWave: { mean: 4, amplitude: 15, minimumDay: 25, diffusivity: 5.6e-7 },
    difference: { mean: 1, largest: 1.6, waveFrostDepth: 2, waveFit: 0.7 },
    snowDepth: Float64Array.from({ length: 365 }, (_, day) => Math.max(0, 0.4 - day / 200)),
    sensitivity: ["as given", "bare ground kept clear of snow"].map((change, index) => ({
      change,
      conductivity: 1.3,
      moisture: 0.25,
      frostDepth: 1.4 + index,
      meanAtTubeDepth: 5,
      minAtTubeDepth: -3 - index,
      maxAtTubeDepth: 13,
      ...index === 1 ? { cleared: true } : {},
    })),
    notices: [],
  }),
);

const houseYear = (lift: number): HouseYear =>
  made<HouseYear>({
    airTemperature: hourly((hour) => outdoors[hour]! + lift + 12 * daytime(hour)),
    relativeHumidity: hourly(() => 0.8),
    heater: zeros,
    solar: radiation,
    vent: zeros,
    floor: hourly((hour) => -300 * season(hour)),
    glazing: hourly((hour) => -2000 + 1500 * season(hour)),
    opaque: hourly(() => -100),
    leakage: hourly(() => -200),
    evaporation: hourly((hour) => -100 * daytime(hour)),
    condensed: hourly(() => 1e-5),
    evaporated: hourly(() => 2e-5),
  });

export const houseResult = summariseHouse(
  HOUSE,
  climateYear,
  made<HouseResult>({
    geometry: { parts: [], floorArea: 192, volume: 600, perimeter: 64 },
    lossParts: [
      { id: "glazing", name: "glazing", conductance: 420 },
      { id: "walls", name: "north wall & roof <insulated>", conductance: 40 },
      { id: "leakage", name: "leakage", conductance: 110 },
    ],
    lossCoefficient: 570,
    peakHeatLoss: 20000,
    heatDemand: 30000,
    coldestHourNoStore: -14,
    hoursBelowFreezingNoStore: 1700,
    firstFreezeNoStore: 6700,
    freeRunning: houseYear(4),
    heated: houseYear(6),
    heatDemandByMonth: [6000, 5000, 3000, 1000, 0, 0, 0, 0, 0, 1000, 3000, 6000],
    condensateByMonth: Array.from({ length: 12 }, () => 26),
    notices: [],
  }),
);

const changed = { coldestHour: -13, coldestHourGain: 1, hoursBelowFreezing: 1500 };
const unchanged = { coldestHour: -14, coldestHourGain: 0, hoursBelowFreezing: 1700 };
export const ranking: readonly RankedMeasure[] = [
  { name: "as it is", change: "", heatDemand: 30000, saved: 0, savedShare: 0, ...unchanged },
  {
    name: "sealing",
    change: "leakage halved",
    heatDemand: 27000,
    saved: 3000,
    savedShare: 0.1,
    ...changed,
  },
  {
    name: "water barrels",
    change: "more water",
    heatDemand: 30300,
    saved: -300,
    savedShare: -0.01,
    ...changed,
  },
];

const logged = (level: number, swing: number) =>
  Float64Array.from({ length: 288 * 3 }, (_, i) => level + swing * Math.sin(i / 46));
const log = { stepSeconds: 300, airTemperature: logged(20, 4), airHumidity: logged(0.7, 0.1) };
const prediction = { airTemperature: logged(21, 4), relativeHumidity: logged(0.68, 0.1) };
export const logCheck = made<LogCheck>({
  log,
  prediction,
  means: logMeans(log, prediction),
  unseen: { temperatureError: 1, temperatureBias: 1, humidityError: 0.02, humidityBias: -0.02 },
});

export const tubesResult = summariseTubes(made<TubesResult>({
  product: {},
  count: 20,
  length: 22,
  totalLength: 440,
  diameter: 0.102,
  positions: Array.from(
    { length: 20 },
    (_, tube) => ({ x: tube % 10, depth: tube < 10 ? 0.6 : 0.9 }),
  ),
  airSpeed: 2,
  flowPerTube: 0.0163,
  reynolds: 13600,
  frictionFactor: 0.06,
  pressureDrop: 34,
  lossCoefficient: 14.4,
  filmCoefficient: 10,
  transferUnits: 2.2,
  effectiveness: 1 - Math.exp(-2.2),
  notices: [],
}));

export const headersResult = summariseHeaders(
  made<HeadersResult>({
    diameter: 0.38,
    areaRatio: 0.72,
    shares: Float64Array.from({ length: 20 }, (_, tube) => 0.88 + (tube % 10) * 0.0266),
    flowMin: 0.88,
    flowMax: 1.12,
    unevenness: 0.08,
    pressureDrop: 42,
    supplyPressure: Float64Array.from({ length: 20 }, (_, tube) => 38 + (tube % 10) * 0.4),
    returnPressure: Float64Array.from({ length: 20 }, (_, tube) => 6 - (tube % 10) * 0.4),
    notices: [],
  }),
  tubesResult,
);

export const fanCurve = made<FanCurve>({
  id: "sample",
  name: "Sample fan",
  airFlow: [0, 0.2, 0.4, 0.6],
  staticPressure: [180, 150, 90, 0],
  power: [90, 110, 120, 110],
  outletArea: 0.1,
  source: "made up",
});
export const fanInputs = { fan: "sample", count: 1, speed: 1, filterDirty: 2 } as FanInputs;
export const fanResult = summariseFan(
  fanInputs,
  made<FanResult>({
    airFlow: 0.45,
    pressure: 70,
    power: 118,
    efficiency: 0.27,
    specificPower: 262,
    systemCoefficient: 70 / 0.45 ** 1.9,
    systemExponent: 1.9,
    stalled: false,
    density: 1.2,
    curve: fanCurve,
    systemCurve: [0.1, 0.3, 0.5, 0.7].map((airFlow) => ({
      airFlow,
      pressure: 70 * (airFlow / 0.45) ** 1.9,
    })),
    flowRatio: 0.95,
    dirtyFilter: { airFlow: 0.43, pressure: 77, power: 117 },
    notices: [],
  }),
);

export const storeResult = summariseStore(
  { climate: climateYear, tubes: { count: 20, length: 22 } },
  made<StoreResult>({
    year: {
      house: houseYear(8),
      sensible: hourly((hour) => 6000 * daytime(hour) - 1500),
      latent: hourly((hour) => 2000 * daytime(hour) - 300),
      intakeTemperature: zeros,
      outletTemperature: zeros,
      storeTemperature: hourly((hour) => 12 + 6 * season(hour - 700)),
      fanShare: zeros,
      fanPower: hourly(() => 60),
      condensate: hourly(() => 0.1),
      floor: hourly((hour) => 900 * daytime(hour) - 250),
    },
    noFan: houseYear(5),
    heatIn: 12000,
    heatOut: 8000,
    latentIn: 3000,
    latentOut: 1500,
    recovery: 0.67,
    cop: 15,
    fanEnergy: 525,
    carriedAcrossSeasons: 0.12,
    quarters: [
      [1000, 50, 20, 300, 80],
      [200, 1500, 10, 20, 40],
      [10, 200, 800, 5, 20],
      [20, 100, 400, 1500, 60],
    ],
    sections: {
      x: [-3, -2, -1, 0, 1, 2, 3],
      depths: [0.1, 0.4, 0.8, 1.4, 2.2],
      days: [0, 90, 181, 273],
      temperatures: [0, 1, 2, 3].map((season) =>
        Float64Array.from({ length: 35 }, (_, cell) => season * 5 - 3 + (cell % 7))
      ),
    },
    flows: [
      { from: "condensing vapour", to: "soil", heat: 3000 },
      { from: "floor", to: "soil", heat: 300 },
      { from: "soil", to: "house air", heat: 6500 },
    ],
    floorHeat: 300,
    stateOfCharge: hourly((hour) => 0.5 + 0.5 * season(hour - 700)),
    backupHeatNoFan: 24000,
    savedHeat: 4000,
    backupYear: houseYear(5),
    earlyYears: [{ year: 1, heatIn: 13000, heatOut: 6000 }],
    yearsUntilPeriodic: 3,
    coldestSoil: -3,
    coldestHour: -6,
    hoursBelowFreezing: 900,
    firstFreeze: 7000,
    backupHeat: 20000,
    balanceResidual: 1e-9,
    notices: [],
  }),
);

export const ways: readonly HouseWay[] = waysCompared(
  [false, true].flatMap((store) =>
    [false, true].map((curtain) => ({
      name: `${store ? "store" : "no store"}, ${curtain ? "curtain" : "no curtain"}`,
      store,
      curtain,
      year: houseYear(3 + (store ? 3 : 0) + (curtain ? 4 : 0)),
      coldestHour: -17 + (store ? 3 : 0) + (curtain ? 4 : 0),
      hoursBelowFreezing: 2000,
      firstFreeze: store && curtain ? null : 7200,
      backupHeat: 40000 - (store ? 4000 : 0) - (curtain ? 12000 : 0),
      hoursBelow: [-10, -5, 0, 5].map((limit) => ({ limit, hours: 2000 + 100 * limit })),
    }))
  ),
);

export const variants: readonly ComparedVariant[] = variantsCompared(
  ["as planned", "longer", "drier"].map((name, k) => ({
    name,
    heatIn: 12000,
    heatOut: 8000,
    latentIn: 3000,
    fanEnergy: 500,
    recovery: 0.67,
    cop: 16,
    coldestHour: -6 + [0, 0.4, -0.7][k]!,
    hoursBelowFreezing: 900,
    backupHeat: 20000 - [0, 150, -600][k]!,
  })),
);

export const steps = firstSteps({
  curtain: true,
  store: { savedHeat: 4000, coldestHourGain: 3, fanEnergy: 525 },
  ranking,
  ways,
});
