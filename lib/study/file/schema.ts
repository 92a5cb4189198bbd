/** Schema of the study file: which sections and keys there are, and what each must be. @module */
import { z } from "zod";
import type { Place } from "../../climate/types.ts";
import type { FanInputs } from "../../fan/types.ts";
import type { HeadersInputs } from "../../headers/types.ts";
import type { CurtainInputs, HouseInputs } from "../../house/types.ts";
import type { SoilInputs, SoilLayerInputs } from "../../soil/types.ts";
import type { GravelBed, PlateCollector, StoreInputs } from "../../store/mod.ts";
import type { Horizon, HorizonPoint } from "../../sun/mod.ts";
import type { TubesInputs } from "../../tubes/types.ts";
import { findCrop, findGlazing, findJunctions, findTube } from "./catalogues.ts";
import {
  choice,
  derivedQuantity,
  derivedWhole,
  type Field,
  id,
  list,
  optionalText,
  quantity,
  quantityOr,
  text,
  timeZone,
  wall,
  wallOrGlazed,
  whole,
  yesNo,
} from "./field_builders.ts";
import type { StudyHeading } from "../types.ts";

/** Inputs of a section in which the keys `Derived` may still wait for their default. */
export type Partly<T, Derived extends keyof T> =
  & Omit<T, Derived>
  & { readonly [K in Derived]: T[K] | undefined };

type Shape<T> = { readonly [K in keyof T]-?: Field<T[K]> };

/** Curtain as given; keys whose default follows from other inputs may be undefined. */
export type CurtainGiven = Partly<CurtainInputs, "closeBelowOutside">;
/** House as given. */
export type HouseGiven =
  & Omit<Partly<HouseInputs, "ridgeHeight" | "waterSurface" | "heatSetPointDay">, "curtain">
  & { readonly curtain: CurtainGiven | null };
/** Soil as given. */
export type SoilGiven =
  & Omit<Partly<SoilInputs, "dryDensity" | "moisture" | "quartz">, "layers">
  & { readonly layers: readonly SoilLayerGiven[] };
/** A layer of soil as given. */
export type SoilLayerGiven = Partly<SoilLayerInputs, "dryDensity" | "moisture" | "quartz">;
/** Place as given; an open skyline is an empty one. */
export type PlaceGiven = Omit<Place, "horizon"> & { readonly horizon: Horizon };
/** Tubes as given. */
export type TubesGiven = Partly<TubesInputs, "count" | "length" | "airFlow" | "spacing">;
/** Headers as given. */
export type HeadersGiven = Partly<HeadersInputs, "diameter" | "returnDiameter">;
/** Fan as given. */
export type FanGiven =
  & Omit<Partly<FanInputs, "fan" | "count" | "riserDiameter">, "ownFans">
  & { readonly curves: string | undefined };
/** Heading as given. */
export type HeadingGiven = Partly<StudyHeading, "name" | "title">;

/** Where the year comes from, paths as written. */
export interface ClimateGiven {
  readonly file: string | undefined;
  readonly columns: string | undefined;
  readonly normals: string | undefined;
  readonly seed: number;
}

/** The study file after the schema, before derived defaults and the climate. */
export interface StudyGiven {
  readonly study: HeadingGiven;
  readonly place: PlaceGiven;
  readonly climate: ClimateGiven;
  readonly soil: SoilGiven;
  readonly house: HouseGiven;
  readonly tubes: TubesGiven;
  readonly headers: HeadersGiven;
  readonly fan: FanGiven;
  readonly store: StoreInputs;
}

const heading: Shape<HeadingGiven> = {
  name: optionalText("study.name"),
  title: optionalText("study.title"),
  author: text("study.author"),
  question: text("study.question"),
};

const horizonPoint: Shape<HorizonPoint> = {
  azimuth: quantity("place.horizon.azimuth"),
  elevation: quantity("place.horizon.elevation"),
};

const place: Shape<PlaceGiven> = {
  name: text("place.name"),
  latitude: quantity("place.latitude"),
  longitude: quantity("place.longitude"),
  elevation: quantity("place.elevation"),
  timeZone: timeZone("place.timeZone"),
  horizon: list("place.horizon", horizonPoint),
};

const climate: Shape<ClimateGiven> = {
  file: optionalText("climate.file"),
  columns: optionalText("climate.columns"),
  normals: optionalText("climate.normals"),
  seed: whole("climate.seed"),
};

const TEXTURES = [
  "gravel",
  "coarse sand",
  "fine sand",
  "silt",
  "loam",
  "clay",
  "peat",
] as const;

const soilLayer: Shape<SoilLayerGiven> = {
  thickness: quantity("soil.layers.thickness"),
  texture: choice("soil.layers.texture", TEXTURES),
  dryDensity: derivedQuantity("soil.layers.dryDensity"),
  moisture: derivedQuantity("soil.layers.moisture"),
  quartz: derivedQuantity("soil.layers.quartz"),
  measuredConductivity: quantityOr("soil.layers.measuredConductivity", "none", null),
};

const soil: Shape<SoilGiven> = {
  texture: choice("soil.texture", TEXTURES),
  dryDensity: derivedQuantity("soil.dryDensity"),
  moisture: derivedQuantity("soil.moisture"),
  quartz: derivedQuantity("soil.quartz"),
  measuredConductivity: quantityOr("soil.measuredConductivity", "none", null),
  waterTableDepth: quantityOr("soil.waterTableDepth", "none", null),
  snowDepth: quantity("soil.snowDepth"),
  layers: list("soil.layers", soilLayer),
};

const curtain: Shape<CurtainGiven> = {
  resistance: quantity("house.curtain.resistance"),
  coverage: quantity("house.curtain.coverage"),
  edgeLeak: quantity("house.curtain.edgeLeak"),
  closeBelow: quantity("house.curtain.closeBelow"),
  closeBelowOutside: derivedQuantity("house.curtain.closeBelowOutside"),
};

/** A section of its own, or the word none, which stands for `meaning`. */
function sectionOrNone<T, N>(shape: Shape<T>, meaning: N): Field<T | N> {
  return z.preprocess(
    (value) => value === "none" ? null : value,
    z.strictObject(shape as z.ZodRawShape).nullable(),
  ).prefault("none").meta({ default: "none" }).transform((value) =>
    value === null ? meaning : value
  ) as unknown as Field<T | N>;
}

const house: Shape<HouseGiven> = {
  shape: choice("house.shape", ["gable", "hoop", "lean-to"]),
  length: quantity("house.length"),
  width: quantity("house.width"),
  eaveHeight: quantity("house.eaveHeight"),
  ridgeHeight: derivedQuantity("house.ridgeHeight"),
  facing: quantity("house.facing"),
  glazing: id("house.glazing", findGlazing),
  northWall: wallOrGlazed("house.northWall"),
  kneeWallHeight: quantity("house.kneeWallHeight"),
  kneeWall: wall("house.kneeWall"),
  endWalls: wallOrGlazed("house.endWalls"),
  northRoof: wallOrGlazed("house.northRoof"),
  leakage: quantity("house.leakage"),
  leakageWind: quantity("house.leakageWind"),
  curtain: sectionOrNone(curtain, null),
  edgeInsulation: quantity("house.edgeInsulation"),
  edgeInsulationDepth: quantity("house.edgeInsulationDepth"),
  footingDepth: quantity("house.footingDepth"),
  edgeInsulationWing: quantity("house.edgeInsulationWing"),
  northEarthHeight: quantity("house.northEarthHeight"),
  waterVolume: quantity("house.waterVolume"),
  waterSurface: derivedQuantity("house.waterSurface"),
  masonryVolume: quantity("house.masonryVolume"),
  masonrySurface: quantity("house.masonrySurface"),
  massSunView: quantity("house.massSunView"),
  summerShade: quantity("house.summerShade"),
  summerShadeAbove: quantity("house.summerShadeAbove"),
  crop: id("house.crop", findCrop),
  leafArea: quantity("house.leafArea"),
  heatSetPoint: quantity("house.heatSetPoint"),
  heatSetPointDay: derivedQuantity("house.heatSetPointDay"),
  ventSetPoint: quantity("house.ventSetPoint"),
  ventCapacity: quantity("house.ventCapacity"),
  purgeHumidity: quantity("house.purgeHumidity"),
  heaterPower: quantity("house.heaterPower"),
};

const tubes: Shape<TubesGiven> = {
  tube: id("tubes.tube", findTube),
  count: derivedWhole("tubes.count"),
  length: derivedQuantity("tubes.length"),
  spacing: derivedQuantity("tubes.spacing"),
  layers: whole("tubes.layers"),
  layerSpacing: quantity("tubes.layerSpacing"),
  depth: quantity("tubes.depth"),
  airFlow: derivedQuantity("tubes.airFlow"),
  slope: quantity("tubes.slope"),
  direction: choice("tubes.direction", ["along", "across"]),
  extraLosses: quantity("tubes.extraLosses"),
};

const headers: Shape<HeadersGiven> = {
  layout: choice("headers.layout", ["Z", "U", "centre", "two-ended"]),
  diameter: derivedQuantity("headers.diameter"),
  returnDiameter: derivedQuantity("headers.returnDiameter"),
  roughness: quantity("headers.roughness"),
  manning: quantityOr("headers.manning", "none", null),
  inlet: choice("headers.inlet", ["flush", "protruding", "rounded"]),
  insertion: quantity("headers.insertion"),
  groups: whole("headers.groups"),
  taper: quantity("headers.taper"),
  junctions: id("headers.junctions", findJunctions),
};

const fan: Shape<FanGiven> = {
  fan: optionalText("fan.fan"),
  curves: optionalText("fan.curves"),
  count: derivedWhole("fan.count"),
  speed: quantity("fan.speed"),
  riserDiameter: derivedQuantity("fan.riserDiameter"),
  riserLosses: quantity("fan.riserLosses"),
  filterPressure: quantity("fan.filterPressure"),
  filterDirty: quantity("fan.filterDirty"),
  note: text("fan.note"),
};

const collector: Shape<PlateCollector> = {
  area: quantity("store.collector.area"),
  sunShare: quantity("store.collector.sunShare"),
  holeDiameter: quantity("store.collector.holeDiameter"),
  pitch: quantity("store.collector.pitch"),
  absorptance: quantity("store.collector.absorptance"),
  emissivity: quantity("store.collector.emissivity"),
};

const gravelBed: Shape<GravelBed> = {
  margin: quantity("store.gravelBed.margin"),
  conductivity: quantity("store.gravelBed.conductivity"),
  heatCapacity: quantity("store.gravelBed.heatCapacity"),
};

const store: Shape<StoreInputs> = {
  chargeStart: quantity("store.chargeStart"),
  chargeStop: quantity("store.chargeStop"),
  chargeAbove: quantity("store.chargeAbove"),
  dischargeStart: quantity("store.dischargeStart"),
  dischargeStop: quantity("store.dischargeStop"),
  dischargeBelow: quantity("store.dischargeBelow"),
  minimumRun: quantity("store.minimumRun"),
  humidityLockOut: quantity("store.humidityLockOut"),
  stratification: quantity("store.stratification"),
  reverse: yesNo("store.reverse"),
  slices: whole("store.slices"),
  spinUpYears: whole("store.spinUpYears"),
  outsideSoil: quantity("store.outsideSoil"),
  meshDepth: quantity("store.meshDepth"),
  ventsFirst: yesNo("store.ventsFirst"),
  flatBoardResistance: quantityOr("store.flatBoardResistance", "none", undefined),
  flatBoardDepth: quantityOr("store.flatBoardDepth", "none", undefined),
  groundWaterMoves: yesNo("store.groundWaterMoves"),
  collector: sectionOrNone(collector, undefined),
  gravelBed: sectionOrNone(gravelBed, undefined),
};

/** A section that may be left out when all its keys have defaults. */
function section(shape: z.ZodRawShape): z.ZodType {
  return z.strictObject(shape).prefault({} as never);
}

/** Schema of the whole study file. */
export const STUDY_SCHEMA: z.ZodType<StudyGiven> = z.strictObject({
  study: section(heading),
  place: z.strictObject(place),
  climate: z.strictObject(climate),
  soil: section(soil),
  house: z.strictObject(house),
  tubes: section(tubes),
  headers: section(headers),
  fan: section(fan),
  store: section(store),
}) as unknown as z.ZodType<StudyGiven>;

/** Every key of the study file with its section: `["house", ["length", …]]`; sub-sections dotted. */
export const STUDY_KEYS: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries({
    "": { study: 0, place, climate, soil, house, tubes, headers, fan, store },
    study: heading,
    place,
    "place.horizon": horizonPoint,
    climate,
    soil,
    "soil.layers": soilLayer,
    house,
    "house.curtain": curtain,
    tubes,
    headers,
    fan,
    store,
    "store.collector": collector,
    "store.gravelBed": gravelBed,
  }).map(([section, shape]) => [section, Object.keys(shape)]),
);
