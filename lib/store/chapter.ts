/** The store chapter: what happens over days, seasons and years? @module */
import { chapter, extra, type Steps } from "../basics/mod.ts";
import type { HouseResult } from "../house/types.ts";
import { designAir } from "../tubes/mod.ts";
import { storeChapter, storeSteps } from "./compute.ts";
import { existingHouse, existingHouseSteps } from "./existing_house.ts";
import { fieldSearch } from "./field_search.ts";
import { storeFields } from "./fields.ts";
import { storeFigures } from "./figures.ts";
import { powerCut, powerCutSteps } from "./power_cut.ts";
import { resolutionSteps, type ResolvedFigures, storeResolution } from "./resolution.ts";
import { firstSteps } from "./first_steps.ts";
import { type RankedKnown, type RankedMeasure, rankingSteps, rankMeasures } from "./ranking.ts";
import { rootZone, rootZoneSteps } from "./root_zone.ts";
import { solarFan } from "./solar_fan.ts";
import { type SummarisedStore, summariseStore } from "./summary.ts";
import { tubeAtStrongestHour } from "./tube_along.ts";
import { tubeCounts } from "./tube_count.ts";
import { storeVariants, type VariantRow, variantSteps } from "./variants/variants.ts";
import { type HouseWay, houseWays, type KnownYears, waySteps } from "./variants/ways.ts";
import {
  existingHouseTables,
  fieldSearchTables,
  firstStepsTables,
  powerCutTables,
  rankingTables,
  resolutionTables,
  rootZoneTables,
  solarFanTables,
  tubeAlongTables,
  tubeCountTables,
  variantsTables,
  waysTables,
} from "./extra_tables.ts";
import { storeTables } from "./result_tables.ts";
import { coarseRequest, type StoreEarlier, storeRequest, type StoreStudy } from "./takes.ts";

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
      hoursBelowCropLimit: result.cropNoFan.killing.hours,
    },
    store: {
      heatDemand: result.backupHeat,
      coldestHour: result.coldestHour,
      hoursBelowFreezing: result.crop.freezing.hours,
      hoursBelowCropLimit: result.crop.killing.hours,
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

/** The chapter's own figures, as they are compared with finer computations. */
function resolvedFigures(result: SummarisedStore): ResolvedFigures {
  const { heatIn, heatOut, savedHeat, coldestHour, coldestHourNoFan } = result;
  return { heatIn, heatOut, savedHeat, coldestHour, coldestHourNoFan };
}

/** House, tubes and soil together, hour by hour, until the year repeats. */
export const store = chapter({
  name: "store",
  section: { fields: storeFields },
  after: AFTER,
  takes: storeRequest,
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
        request: storeRequest(study, earlier),
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
        request: coarseRequest(study, earlier),
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
        request: storeRequest(study, earlier),
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
        request: storeRequest(study, earlier),
        states: earlier.store.cutStates,
      }),
      compute: ({ request, states }) => powerCut(request, states),
      steps: ({ request, states }) => powerCutSteps(request, states),
      tables: powerCutTables,
    }),
    /** The beds where seeds and roots are, with the store and without. */
    rootZone: extra({
      after: [...AFTER, "store"],
      takes: (study: StoreStudy, earlier: ExtrasEarlier) => ({
        request: storeRequest(study, earlier),
        sections: earlier.store.sections,
      }),
      compute: ({ request, sections }) => rootZone(request, sections),
      steps: ({ request, sections }) => rootZoneSteps(request, sections),
      tables: rootZoneTables,
    }),
    /** The first year under a house that has stood for years. */
    existingHouse: extra({
      after: [...AFTER, "store"],
      takes: (study: StoreStudy, earlier: ExtrasEarlier) => ({
        request: storeRequest(study, earlier),
        heatOut: earlier.store.heatOut,
      }),
      compute: ({ request, heatOut }) => existingHouse(request, heatOut),
      steps: ({ request, heatOut }) => existingHouseSteps(request, heatOut),
      tables: existingHouseTables,
    }),
    /** Panel and battery that would carry the fans through the year. */
    solarFan: extra({
      after: ["store"],
      takes: (study: StoreStudy, { store: { year } }: Pick<ExtrasEarlier, "store">) => ({
        climate: study.climate,
        year: { fanShare: year.fanShare, fanPower: year.fanPower },
      }),
      compute: solarFan,
      tables: solarFanTables,
    }),
    /** Insulation or store first? */
    firstSteps: extra({
      after: ["store", "ranking", "ways"],
      takes: (study: StoreStudy, { store, ranking, ways }: StepsEarlier) => ({
        curtain: study.house.curtain !== null,
        store: {
          savedHeat: store.savedHeat,
          coldestHourGain: store.coldestHour - store.coldestHourNoFan,
          fanEnergy: store.backupFanEnergy,
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
    /** How far the figures move with cells, steps, slices and soil around twice as fine or large. */
    resolution: extra({
      after: [...AFTER, "store"],
      takes: (study: StoreStudy, earlier: ExtrasEarlier) => ({
        request: storeRequest(study, earlier),
        plan: resolvedFigures(earlier.store),
      }),
      compute: ({ request, plan }) => storeResolution(request, plan),
      steps: ({ request, plan }) => resolutionSteps(request, plan),
      tables: resolutionTables,
      onlyAsked: true,
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
