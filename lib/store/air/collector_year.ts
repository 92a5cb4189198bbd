/** A year of a study's plate collector: what it can give the charging air hour by hour. @module */
import { showBoth, showRange, showSi } from "../../units/mod.ts";
import { airProperties } from "../../air/mod.ts";
import { DEGREE, InputError, STEFAN_BOLTZMANN, ZERO_CELSIUS } from "../../basics/mod.ts";
import type { ClimateYear } from "../../climate/types.ts";
import {
  EMISSIVITY,
  findGlazing,
  glazingOptics,
  outsideFilm,
  planeInside,
  planeSeries,
  splitGlazing,
} from "../../house/mod.ts";
import type { HouseInputs, HouseModel } from "../../house/types.ts";
import { beamTransmittance, diffuseTransmittance, hourlySun, skyLongwave } from "../../sun/mod.ts";
import { type PlateAir, type PlateCollector, plateEfficiency, plateTransfer } from "./collector.ts";
import { type BoxConductances, boxHeat, plateRadiation } from "./collector_box.ts";

/** Heat that the charging air can take, hour by hour: gain − loss·(air drawn in), 0 to most. */
export interface CollectorYear {
  /** W at 0 degC */
  readonly gain: Float64Array;
  /** W/K */
  readonly loss: Float64Array;
  /** W: the sun on the plate, behind its cover, that it takes up */
  readonly most: Float64Array;
  /** true: the heat comes from outdoors; false: from the light of the house */
  readonly outdoors: boolean;
}

/** What a collector's year depends on. */
export interface CollectorGiven {
  readonly plate: PlateCollector;
  readonly climate: ClimateYear;
  readonly houseInputs: HouseInputs;
  /** m³/s that the fan draws through the plate */
  readonly airFlow: number;
}

/** degC at which the plate's air is taken, common practice, no source. */
const COLLECTOR_AIR = 20;
/** m/s towards the plate that the published relation can be stretched to; it was found at 0.02 to 0.1. */
const PLATE_SUCTION = { least: 0.005, most: 0.2 } as const;

/** What to say of a plate that does not fit its air flow; null where it does. */
export function suctionFault(area: number, airFlow: number): string | null {
  const { least, most } = PLATE_SUCTION;
  const suction = airFlow / area;
  if (suction >= least && suction <= most) return null;
  return `"store.collector.area" of ${showBoth(area, "area")} is drawn through at ` +
    `${showSi(suction, "speed", 3)} by ${showBoth(airFlow, "airFlow")}: expected ` +
    `${showRange(least, most, "speed", 3)}, usual are 0.02 to 0.1 m/s; so ` +
    showRange(airFlow / most, airFlow / least, "area");
}

/** Air at the plate; there is no wind along it, indoors or in the box. */
function plateAir({ plate, climate, airFlow }: CollectorGiven): PlateAir {
  const fault = suctionFault(plate.area, airFlow);
  if (fault !== null) throw new InputError(fault);
  const air = airProperties(COLLECTOR_AIR, climate.pressure[0]!);
  return {
    suction: airFlow / plate.area,
    crosswind: 0,
    density: air.density,
    kinematicViscosity: air.viscosity / air.density,
    conductivity: air.conductivity,
    heatCapacity: air.heatCapacity,
  };
}

function planeOf({ plate, houseInputs }: CollectorGiven) {
  return { tilt: plate.tilt, azimuth: plate.azimuth ?? houseInputs.facing };
}

/** Where the light in the house goes, W by hour. */
type LitSkin = Pick<
  HouseModel,
  "solarFloor" | "solarCrop" | "solarMass" | "solarRising" | "solarAir"
>;

/** All light that floor, crop, mass and air of the house take up, W. */
function lightOf(house: LitSkin, hour: number): number {
  return house.solarFloor[hour]! + house.solarCrop[hour]! + house.solarMass[hour]! +
    house.solarAir[hour]!;
}

/** A plate in the house, and the house without the light that the plate takes. */
function inside(given: CollectorGiven, house: HouseModel) {
  const { plate, climate, houseInputs } = given;
  const share = plateEfficiency(plate, plateAir(given), COLLECTOR_AIR) / plate.absorptance;
  const light = planeInside(houseInputs, climate, planeOf(given), house.curtainClosed);
  const most = light.map((value, hour) =>
    Math.min(plate.absorptance * plate.area * value, lightOf(house, hour))
  );
  const left = most.map((taken, hour) => taken > 0 ? 1 - taken / lightOf(house, hour) : 1);
  const collector: CollectorYear = {
    gain: most.map((taken) => share * taken),
    loss: new Float64Array(most.length),
    most,
    outdoors: false,
  };
  return {
    collector,
    house: {
      ...house,
      ...behindPlate(house, left, (hour) => most[hour]!),
      ...(house.shut === undefined ? {} : {
        shut: {
          ...house.shut,
          ...behindPlate(
            house.shut,
            left,
            (hour) => (1 - left[hour]!) * lightOf(house.shut!, hour),
          ),
        },
      }),
    },
  };
}

/** Light of a skin less what the plate takes, which comes back to the air. */
function behindPlate(
  skin: LitSkin,
  left: Float64Array,
  taken: (hour: number) => number,
): LitSkin {
  const rest = (series: Float64Array) => series.map((value, hour) => value * left[hour]!);
  return {
    solarFloor: rest(skin.solarFloor),
    solarCrop: rest(skin.solarCrop),
    solarMass: rest(skin.solarMass),
    solarRising: rest(skin.solarRising),
    solarAir: skin.solarAir.map((value, hour) => value * left[hour]! + taken(hour)),
  };
}

/** W/m² of sun that the plate of a box outdoors takes up. */
function absorbedOutdoors(given: CollectorGiven): Float64Array {
  const { plate, climate } = given;
  const cover = findGlazing(plate.cover);
  const optics = glazingOptics(cover);
  const spread = diffuseTransmittance(optics);
  const light = planeSeries(climate, hourlySun(climate.place))(planeOf(given));
  return light.beam.map((direct, hour) => {
    const incidence = Math.acos(Math.min(1, light.cosIncidence[hour]!)) / DEGREE;
    const through = direct > 0 ? direct * beamTransmittance(optics, incidence) : 0;
    return plate.absorptance * cover.lightFactor *
      (through + spread * (light.skyDiffuse[hour]! + light.groundReflected[hour]!));
  });
}

/** A plate in a glazed box outdoors, its ducts included. */
function outside(given: CollectorGiven): CollectorYear {
  const { plate, climate } = given;
  const air = plateAir(given);
  const stream = air.density * air.heatCapacity * air.suction;
  const cover = findGlazing(plate.cover);
  const clear = cover.longWaveTransmittance;
  const films = splitGlazing(cover.heatTransmittance, clear);
  const sheet = Math.max(0, films.innerResistance - 1 / films.insideFilm);
  const radiation = plateRadiation(plate.emissivity, clear);
  const exchange = plateTransfer(plate, air).effectiveness * stream;
  const absorbed = absorbedOutdoors(given);
  const sky = skyLongwave(climate);
  const seen = (1 + Math.cos(plate.tilt * DEGREE)) / 2;
  const rate = stream * plate.area;
  const kept = Math.exp(-plate.ductLoss * plate.ductLength / rate);
  const [gain, loss] = [new Float64Array(absorbed.length), new Float64Array(absorbed.length)];
  for (let hour = 0; hour < absorbed.length; hour++) {
    const film = outsideFilm(climate.windSpeed[hour]!);
    const dry = climate.dryBulb[hour]!;
    const deficit = STEFAN_BOLTZMANN * (dry + ZERO_CELSIUS) ** 4 - sky[hour]!;
    const box: BoxConductances = { ...radiation, air: exchange, outside: 1 / (sheet + 1 / film) };
    const seenOutdoors = dry - EMISSIVITY * seen * deficit / film;
    const heat = (inlet: number) => plate.area * boxHeat(box, absorbed[hour]!, inlet, seenOutdoors);
    const [cold, warm] = [heat(0), heat(1)];
    gain[hour] = kept * cold + rate * (1 - kept) * dry;
    loss[hour] = kept * (cold - warm) + rate * (1 - kept);
  }
  return { gain, loss, most: absorbed.map((value) => plate.area * value), outdoors: true };
}

/**
 * The collector's year, and the house as it stands with the plate in it.
 *
 * In the house the plate shades floor, crop and mass: what it takes up is theirs no more. It warms
 * the charging air while the fan draws through it, and the house air with what is left, or with all
 * of it while the fan rests. Outdoors it takes nothing from the house. A damper passes it by in
 * hours in which it would cool the air.
 *
 * @param given plate, weather, house and air flow
 * @param house without the plate
 * @throws {InputError} where plate and air flow do not fit together
 */
export function collectorYear(
  given: CollectorGiven,
  house: HouseModel,
): { readonly collector: CollectorYear; readonly house: HouseModel } {
  return given.plate.place === "inside"
    ? inside(given, house)
    : { collector: outside(given), house };
}

/** W that charging air at a temperature takes from the collector. */
export function collectorHeat(collector: CollectorYear, hour: number, air: number): number {
  const heat = collector.gain[hour]! - collector.loss[hour]! * air;
  return Math.min(collector.most[hour]!, Math.max(0, heat));
}
