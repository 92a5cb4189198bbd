/** Predicts a logged compartment with the house's own step. @module */
import {
  DRY_AIR_HEAT_CAPACITY,
  humidityRatioFromRelativeHumidity,
  relativeHumidityFromRatio,
} from "../air/mod.ts";
import { DAY, STANDARD_PRESSURE } from "../basics/mod.ts";
import { LEWIS_POWER, splitGlazing } from "../house/skin/films.ts";
import type { FloorColumn } from "../house/floor/floor_column.ts";
import { floorStepper } from "../house/floor/floor_stepper.ts";
import { CHOSEN_FORM, type LogForm } from "./log_form.ts";
import { logSkin } from "./log_skin.ts";
import type { LogParameters } from "./log_parameters.ts";
import type { GreenhouseLog } from "./log_table.ts";
import { stepHouse } from "../house/air/step.ts";
import type { HouseBoundary, HouseModel, HouseState } from "../house/types.ts";

/** m, height of the compartment under the screens and gutters (common practice, no source). */
const HEIGHT = 5;
/** kg/m² of air under that height */
const DRY_AIR_MASS = 1.2 * HEIGHT;
const GLASS = 6.2;
const ALL_FLOOR = 1;
const CROP_EXTINCTION = 0.7;
/** leaf area at which a growing crop stops (common practice for lettuce, no source) */
const FULL_CROP = 4;
/** share of the light to the air at once and wet share of the floor of the forms that fix them */
const TENTH = 0.1;
/** share of a crop's leaf area at the start that counts as full */
const NEARLY_FULL = 0.99;

/** Concrete and soil under the compartment, per m². */
function logFloor(neighbour: number, film: number): FloorColumn {
  const faces = [0, 0.05, 0.12, 0.25, 0.45];
  const thickness = faces.slice(1).map((face, i) => face - faces[i]!);
  const conductivity = 1.4;
  const layers = thickness.length;
  return {
    curve: null,
    depths: Float64Array.from(thickness, (height, i) => faces[i]! + height / 2),
    capacity: Float64Array.from(thickness, (height) => 2e6 * height),
    downward: Float64Array.from(
      thickness,
      (height, i) => i + 1 < layers ? conductivity / ((height + thickness[i + 1]!) / 2) : 0,
    ),
    sideways: new Float64Array(layers),
    surface: conductivity / (thickness[0]! / 2),
    film,
    outside: new Float64Array(layers).fill(neighbour),
    edgeLossFactor: 0,
  };
}

function screensLeft(log: GreenhouseLog, i: number): number {
  return (1 - log.energyScreen[i]! * 0.3) * (1 - log.blackoutScreen[i]! * 0.98);
}

/** Leaf area at each entry. */
function leafAreas(log: GreenhouseLog, p: LogParameters, form: LogForm): Float64Array {
  const count = log.outsideTemperature.length;
  if (form.crop === "constant") return new Float64Array(count).fill(p.leafArea);
  const start = FULL_CROP / Math.min(NEARLY_FULL * FULL_CROP, p.leafArea) - 1;
  return Float64Array.from({ length: count }, (_, i) => {
    const days = log.firstDay + i * log.stepSeconds / DAY;
    return FULL_CROP / (1 + start * Math.exp(-p.growth * days));
  });
}

/** W/m² of sun and lamps that end as heat inside, at each entry. */
function logGains(log: GreenhouseLog, p: LogParameters, form: LogForm) {
  const [sun, lamps] = [0, 1].map(() => new Float64Array(log.outsideTemperature.length));
  for (let i = 0; i < sun!.length; i++) {
    const under = log.globalRadiation[i]! * screensLeft(log, i);
    const light = under * (form.light === "geometry" ? log.glassLight[i]! : 1);
    sun![i] = p.solarShare * light;
    lamps![i] = p.lampHeat * Math.max(0, log.plantLight[i]! - p.lightShare * light);
  }
  return { sun: sun!, lamps: lamps! };
}

/** Share of the heat of sun and of lamps that goes to the air at once. */
function sharesToAir(p: LogParameters, form: LogForm): readonly [number, number] {
  if (form.air === "none") return [0, 0];
  if (form.air === "tenth") return [TENTH, TENTH];
  const most = (share: number) => Math.min(0.9, share);
  return [most(p.airShare), most(form.air === "apart" ? p.lampAirShare : p.airShare)];
}

/** The compartment as a house of 1 m², one entry a log step; ventilation is prescribed. */
function logModel(log: GreenhouseLog, p: LogParameters, form: LogForm): HouseModel {
  const { insideFilm } = splitGlazing(GLASS, 0);
  const count = log.outsideTemperature.length;
  const make = (value: (i: number) => number) =>
    Float64Array.from({ length: count }, (_, i) => value(i));
  const { sun, lamps } = logGains(log, p, form);
  const [sunToAir, lampsToAir] = sharesToAir(p, form);
  const toAir = make((i) => sunToAir * sun[i]! + lampsToAir * lamps[i]!);
  const past = make((i) => sun[i]! + lamps[i]! - toAir[i]!);
  const leafArea = leafAreas(log, p, form);
  const toCrop = leafArea.map((leaves, i) => past[i]! * (1 - Math.exp(-CROP_EXTINCTION * leaves)));
  const bench = form.bench === "mass" ? Math.min(0.9, p.benchShare) : 0;
  const skin = Array.from({ length: count }, (_, i) => logSkin(log, i, p, form, DRY_AIR_MASS));
  return {
    inputs: {
      leakage: 0,
      // the rate itself stands in place of the wind
      leakageWind: 1,
      heatSetPoint: -50,
      ventSetPoint: 90,
      ventCapacity: 0,
      purgeHumidity: 2,
      heaterPower: 0,
    } as HouseModel["inputs"],
    geometry: { parts: [], floorOutline: [], floorArea: ALL_FLOOR, volume: HEIGHT, perimeter: 0 },
    floorFilm: p.floorFilm,
    surfaceFilm: p.floorFilm,
    floorView: new Float64Array(count),
    solarFloor: past.map((heat, i) => (heat - toCrop[i]!) * (1 - bench)),
    solarCrop: toCrop,
    solarMass: past.map((heat, i) => (heat - toCrop[i]!) * bench),
    solarAir: toAir,
    solarRising: new Float64Array(count),
    setPoint: new Float64Array(count).fill(-50),
    solarOutside: log.globalRadiation,
    curtainClosed: new Uint8Array(count),
    glazingConductance: make((i) => skin[i]!.conductance),
    glazingDriving: make((i) => skin[i]!.driving),
    opaqueConductance: new Float64Array(count).fill(p.neighbourFilm),
    opaqueDriving: new Float64Array(count).fill(p.neighbourTemperature),
    filmArea: new Float64Array(count),
    filmLongwave: new Float64Array(count),
    outsideTemperature: log.outsideTemperature,
    outsideRatio: make((i) =>
      humidityRatioFromRelativeHumidity(
        log.outsideTemperature[i]!,
        Math.min(1, log.outsideHumidity[i]!),
        STANDARD_PRESSURE,
      )
    ),
    windSpeed: make((i) => skin[i]!.exchange),
    pressure: STANDARD_PRESSURE,
    dryAirMass: DRY_AIR_MASS,
    airCapacity: p.capacity,
    massStore: { thawed: 0, freezing: 0, frozen: 0 },
    massConductance: 0,
    masonryStore: form.bench === "mass" ? p.benchCapacity : 0,
    masonryConductance: form.bench === "mass" ? p.benchFilm : 0,
    masonrySunShare: form.bench === "mass" ? 1 : 0,
    coverArea: p.coverArea,
    coverFilm: insideFilm,
    floorVapour: (form.floor === "fitted" ? Math.min(1, p.wetFloor) : TENTH) * 3.3 /
      (DRY_AIR_HEAT_CAPACITY * LEWIS_POWER),
    leafArea,
    leafLength: 0.1,
  };
}

/** Predicted series of the log's length. */
export interface LogPrediction {
  /** degC */
  readonly airTemperature: Float64Array;
  /** 0 to 1 */
  readonly relativeHumidity: Float64Array;
}

/**
 * Predicts air temperature and humidity of the compartment from its weather, pipe, vents, screens
 * and lamps. Only the first entry of the measured climate is used, as the start.
 *
 * @param log the log
 * @param parameters of the compartment
 * @param form of the model
 * @returns air temperature in degC and relative humidity, 0 to 1, at each entry of the log
 */
export function replayLog(
  log: GreenhouseLog,
  parameters: LogParameters,
  form: LogForm = CHOSEN_FORM,
): LogPrediction {
  const model = logModel(log, parameters, form);
  const column = logFloor(parameters.neighbourTemperature, parameters.floorFilm);
  const stepper = floorStepper(column, log.stepSeconds);
  const start = log.airTemperature[0]!;
  const soil = new Float64Array(column.depths.length).fill(start);
  let state: HouseState = {
    airTemperature: start,
    humidityRatio: humidityRatioFromRelativeHumidity(start, log.airHumidity[0]!, STANDARD_PRESSURE),
    massTemperature: start,
    masonryTemperature: start,
    ventOpening: 0,
  };
  const count = log.outsideTemperature.length;
  const airTemperature = new Float64Array(count);
  const relativeHumidity = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const pipe = log.pipeTemperature[i]!;
    const hot = pipe > state.airTemperature;
    const boundary: HouseBoundary = {
      floorConductance: stepper.conductance,
      floorTemperature: stepper.prepare(soil, 0),
      storeHeat: 0,
      storeSlope: hot ? -parameters.pipeFilm : 0,
      storeReference: pipe,
      storeVapour: 0,
    };
    const step = stepHouse(model, state, i, log.stepSeconds, boundary);
    stepper.finish(soil, -step.flows.floor, 0);
    state = step.state;
    airTemperature[i] = state.airTemperature;
    relativeHumidity[i] = relativeHumidityFromRatio(
      state.airTemperature,
      state.humidityRatio,
      STANDARD_PRESSURE,
    );
  }
  return { airTemperature, relativeHumidity };
}

/** A stretch of the log. */
export function cutLog(log: GreenhouseLog, from: number, to: number): GreenhouseLog {
  const cut = (series: Float64Array) => series.slice(from, to);
  return {
    stepSeconds: log.stepSeconds,
    firstDay: log.firstDay + from * log.stepSeconds / DAY,
    outsideTemperature: cut(log.outsideTemperature),
    outsideHumidity: cut(log.outsideHumidity),
    globalRadiation: cut(log.globalRadiation),
    glassLight: cut(log.glassLight),
    windSpeed: cut(log.windSpeed),
    netLongwave: cut(log.netLongwave),
    airTemperature: cut(log.airTemperature),
    airHumidity: cut(log.airHumidity),
    pipeTemperature: cut(log.pipeTemperature),
    ventOpening: cut(log.ventOpening),
    energyScreen: cut(log.energyScreen),
    blackoutScreen: cut(log.blackoutScreen),
    plantLight: cut(log.plantLight),
  };
}
