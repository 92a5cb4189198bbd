/** The store chapter: what happens over days, seasons and years? @module */
import { chapter, extra, type Steps } from "../basics/mod.ts";
import { type ClimateYear, plainWeather } from "../climate/mod.ts";
import type { FanResult } from "../fan/types.ts";
import type { HeadersInputs, HeadersResult } from "../headers/types.ts";
import type { HouseInputs, HouseResult } from "../house/types.ts";
import type { SoilInputs, SoilResult } from "../soil/types.ts";
import { designAir } from "../tubes/mod.ts";
import type { TubesInputs, TubesResult } from "../tubes/types.ts";
import { storeChapter, storeSteps } from "./compute.ts";
import { fieldSearch } from "./field_search.ts";
import { storeFields } from "./fields.ts";
import { storeFigures } from "./figures.ts";
import { powerCut, powerCutSteps } from "./power_cut.ts";
import type { StoreRequest } from "./site.ts";
import { firstSteps } from "./first_steps.ts";
import { type RankedKnown, type RankedMeasure, rankingSteps, rankMeasures } from "./ranking.ts";
import { type SummarisedStore, summariseStore } from "./summary.ts";
import { tubeAtStrongestHour } from "./tube_along.ts";
import { tubeCounts } from "./tube_count.ts";
import type { StoreInputs } from "./types.ts";
import { storeVariants, type VariantRow, variantSteps } from "./variants/variants.ts";
import { type HouseWay, houseWays, type KnownYears, waySteps } from "./variants/ways.ts";
import {
  fieldSearchTables,
  firstStepsTables,
  powerCutTables,
  rankingTables,
  tubeAlongTables,
  tubeCountTables,
  variantsTables,
  waysTables,
} from "./extra_tables.ts";
import { storeTables } from "./result_tables.ts";

interface StoreStudy {
  readonly store: StoreInputs;
  readonly climate: ClimateYear;
  readonly soil: SoilInputs;
  readonly house: HouseInputs;
  readonly tubes: TubesInputs;
  readonly headers: HeadersInputs;
}

interface StoreEarlier {
  readonly soil: SoilResult;
  readonly tubes: TubesResult;
  readonly headers: HeadersResult;
  readonly fan: FanResult;
}

interface ExtrasEarlier extends StoreEarlier {
  readonly house: HouseResult;
  readonly store: SummarisedStore;
}

interface StepsEarlier {
  readonly store: SummarisedStore;
  readonly ranking: readonly RankedMeasure[];
  readonly ways: readonly HouseWay[];
}

const AFTER = ["soil", "tubes", "headers", "fan"] as const;

/** Slices along the tubes in comparisons of many stores: within 1 % of the heat of eight. */
const COMPARISON_SLICES = 3;

/** Footing and heater decide nothing here: the house runs free, or is held without limit. */
function takes(study: StoreStudy, { soil, tubes, headers, fan }: StoreEarlier): StoreRequest {
  const { product, count, length, diameter, positions, filmCoefficient } = tubes;
  return {
    inputs: study.store,
    climate: plainWeather(study.climate),
    soilInputs: study.soil,
    soil: { properties: soil.properties, wave: soil.wave },
    houseInputs: { ...study.house, footingDepth: 0, heaterPower: 0 },
    tubesInputs: { direction: study.tubes.direction, airFlow: study.tubes.airFlow },
    tubes: { product, count, length, diameter, positions, filmCoefficient },
    headers: { shares: headers.shares },
    fan: {
      airFlow: fan.airFlow,
      power: fan.power,
      density: fan.density,
      charge: fan.charge,
      discharge: fan.discharge,
    },
  };
}

/** The same store in fewer slices: comparisons run a dozen settled years. */
function takesCoarse(study: StoreStudy, earlier: StoreEarlier): StoreRequest {
  const slices = Math.min(study.store.slices, COMPARISON_SLICES);
  return takes({ ...study, store: { ...study.store, slices } }, earlier);
}

/** The chapter's own years, with the store and with the fan always off. */
function knownYears(result: SummarisedStore): KnownYears {
  return {
    store: { year: result.year.house, backupHeat: result.backupHeat },
    noFan: { year: result.noFan, backupHeat: result.backupHeatNoFan },
  };
}

/** The chapter's own years as rows of the ranking. */
function rankedYears(result: SummarisedStore): RankedKnown {
  return {
    asItIs: {
      heatDemand: result.backupHeatNoFan,
      coldestHour: result.coldestHourNoFan,
      hoursBelowFreezing: result.cropNoFan.freezing.hours,
    },
    store: {
      heatDemand: result.backupHeat,
      coldestHour: result.coldestHour,
      hoursBelowFreezing: result.crop.freezing.hours,
    },
  };
}

/** The chapter's own year as the row of the plan. */
function planRow(result: SummarisedStore): Omit<VariantRow, "name"> {
  const { heatIn, heatOut, latentIn, fanEnergy, recovery, cop } = result;
  const { coldestHour, backupHeat } = result;
  return {
    heatIn,
    heatOut,
    latentIn,
    fanEnergy,
    recovery,
    cop,
    coldestHour,
    hoursBelowFreezing: result.crop.freezing.hours,
    backupHeat,
  };
}

/** House, tubes and soil together, hour by hour, until the year repeats. */
export const store = chapter({
  name: "store",
  section: { fields: storeFields },
  after: AFTER,
  takes,
  compute: (request) => summariseStore(request, storeChapter(request)),
  steps: function* (request): Steps<SummarisedStore> {
    return summariseStore(request, yield* storeSteps(request));
  },
  figures: storeFigures,
  tables: storeTables,
  extras: {
    /** With and without store and curtain; the house as it is has its years from the chapter. */
    ways: extra({
      after: [...AFTER, "store"],
      takes: (study: StoreStudy, earlier: ExtrasEarlier) => ({
        request: takes(study, earlier),
        known: knownYears(earlier.store),
      }),
      compute: ({ request, known }) => houseWays(request, known),
      steps: ({ request, known }) => waySteps(request, known),
      tables: waysTables,
    }),
    /** The store built or run otherwise: differences on a coarser store, set on the chapter's year. */
    variants: extra({
      after: [...AFTER, "store"],
      takes: (study: StoreStudy, earlier: ExtrasEarlier) => ({
        request: takesCoarse(study, earlier),
        plan: planRow(earlier.store),
      }),
      compute: ({ request, plan }) => storeVariants(request, plan),
      steps: ({ request, plan }) => variantSteps(request, plan),
      tables: variantsTables,
    }),
    /** What each improvement of the house brings on the same ground, and the store. */
    ranking: extra({
      after: [...AFTER, "store"],
      takes: (study: StoreStudy, earlier: ExtrasEarlier) => ({
        request: takes(study, earlier),
        known: rankedYears(earlier.store),
      }),
      compute: ({ request, known }) => rankMeasures(request, known),
      steps: ({ request, known }) => rankingSteps(request, known),
      tables: rankingTables,
    }),
    /** How long the house lasts when the power fails in the coldest hours. */
    powerCut: extra({
      after: [...AFTER, "store"],
      takes: (study: StoreStudy, earlier: ExtrasEarlier) => ({
        request: takes(study, earlier),
        states: earlier.store.cutStates,
      }),
      compute: ({ request, states }) => powerCut(request, states),
      steps: ({ request, states }) => powerCutSteps(request, states),
      tables: powerCutTables,
    }),
    /** Insulation or store first? */
    firstSteps: extra({
      after: ["store", "ranking", "ways"],
      takes: (study: StoreStudy, { store, ranking, ways }: StepsEarlier) => ({
        curtain: study.house.curtain !== null,
        store: {
          savedHeat: store.savedHeat,
          coldestHourGain: store.coldestHour - store.coldestHourNoFan,
          fanEnergy: store.fanEnergy,
        },
        ranking,
        ways: ways.map(({ store, curtain, backupHeat, coldestHour }) => ({
          store,
          curtain,
          backupHeat,
          coldestHour,
        })),
      }),
      compute: firstSteps,
      tables: firstStepsTables,
    }),
    /** One tube in the hour that brings most. */
    tubeAlong: extra({
      after: ["tubes", "store"],
      takes: (study: StoreStudy, { tubes, store }: ExtrasEarlier) => {
        const { diameter, length, filmCoefficient, flowPerTube } = tubes;
        return {
          tubes: { diameter, length, filmCoefficient, flowPerTube },
          year: store.year,
          pressure: designAir(study).pressure,
        };
      },
      compute: tubeAtStrongestHour,
      tables: tubeAlongTables,
    }),
    /** Number of tubes by rules of thumb, with the heat of the store's own good days. */
    tubeCounts: extra({
      after: ["house", "tubes", "store"],
      takes: (study: StoreStudy, { house, tubes, store }: ExtrasEarlier) => ({
        house: { peakHeatLoss: house.peakHeatLoss, volume: house.geometry.volume },
        inputs: { count: study.tubes.count },
        tubes: {
          totalLength: tubes.totalLength,
          diameter: tubes.diameter,
          length: tubes.length,
        },
        year: { sensible: store.year.sensible, latent: store.year.latent },
        latitude: study.climate.place.latitude,
      }),
      compute: tubeCounts,
      tables: tubeCountTables,
    }),
    /** Other tube fields, with the study's own soil, fan and hours. */
    fieldSearch: extra({
      after: ["soil", "tubes", "fan", "store"],
      takes: (study: StoreStudy, { soil, tubes, fan, store }: ExtrasEarlier) => ({
        inputs: study.tubes,
        house: { length: study.house.length, width: study.house.width },
        headers: {
          diameter: study.headers.diameter,
          returnDiameter: study.headers.returnDiameter,
          groups: study.headers.groups,
        },
        footingDepth: study.house.footingDepth,
        air: designAir(study),
        soil: {
          conductivity: soil.properties.conductivity,
          heatCapacity: soil.properties.heatCapacity,
        },
        tubes: { pressureDrop: tubes.pressureDrop },
        fan: { pressure: fan.pressure, efficiency: fan.efficiency },
        fanShare: store.year.fanShare,
      }),
      compute: fieldSearch,
      tables: fieldSearchTables,
    }),
  },
});
