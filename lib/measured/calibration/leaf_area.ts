/** Stage: leaf area from the balance of the house's humidity. @module */
import {
  HEAT_OF_VAPORISATION,
  humidityRatioFromRelativeHumidity,
  vapourPressure,
} from "../../air/mod.ts";
import { HOUR, InputError } from "../../basics/mod.ts";
import {
  canopyTranspiration,
  CARBON_DIOXIDE,
  type Crop,
  LEAF_DIFFERENCE,
  leafFilmResistance,
  openStomata,
  stomatalResistance,
} from "../../house/mod.ts";
import { fitLeastSquares } from "../fit/least_squares.ts";
import { certaintyWithTies, estimateOf, serialOf, type Stage } from "./estimate.ts";

/** Series of one length and step; gaps are not numbers. */
export interface HumidityRecord {
  /** s between entries */
  readonly step: number;
  /** degC of the house air */
  readonly inside: Float64Array;
  /** 0 to 1 of the house air */
  readonly insideHumidity: Float64Array;
  /** degC outdoors */
  readonly outside: Float64Array;
  /** 0 to 1 outdoors */
  readonly outsideHumidity: Float64Array;
  /** W/m² of light inside, above the crop */
  readonly light: Float64Array;
  /** air changes, 1/h, hour by hour: by the law of leakage, vents shut */
  readonly airChange: Float64Array;
  /** kg/s that condense on cover and tubes, where it is collected; left out: hours with a dry cover */
  readonly condensate?: Float64Array;
  /** kg/s that beds and tubes give off; negative while they take more up; 0 unless given */
  readonly otherWater?: Float64Array;
  /** degC of the cover's inner face; where it is below the dew point an entry is left out */
  readonly cover?: Float64Array;
  /** 0 to 1, how far the vents stand open */
  readonly vents?: Float64Array;
}

/** The house around it. */
export interface HumidityHouse {
  /** kg of dry air */
  readonly dryAirMass: number;
  /** m² of floor */
  readonly floorArea: number;
  /** Pa */
  readonly pressure: number;
  /** row of data/crops */
  readonly crop: Crop;
  /** standard uncertainty of the air change over its value, common to all entries; 0.1 unless given */
  readonly airChangeDoubt?: number;
}

/** kg/kg; not a number in gaps */
function ratioOf(temperature: number, humidity: number, pressure: number): number {
  return Number.isFinite(temperature + humidity)
    ? humidityRatioFromRelativeHumidity(temperature, Math.min(1, humidity), pressure)
    : NaN;
}

const FEWEST = 24;
/** humidity above which mist and wet leaves are in play and probes are least true */
const DAMPEST = 0.95;
/** kg/s below which an entry tells nothing, per m² of floor */
const LEAST_WATER = 1e-7;

interface Entry {
  readonly place: number;
  readonly water: number;
  readonly give: (leaves: number) => number;
}

/**
 * Leaf area from what the crop must give off: ṁ_air·(w_i − w_o) + M·dw/dt + condensate, against the
 * transpiration of the house model (Stanghellini 1987 [stanghellini-1987], from memory).
 *
 * @param record of the house
 * @param house air, floor and crop
 * @returns stage with `house.leafArea`, a ratio to the floor
 * @throws InputError where fewer than 24 entries can be used
 */
export function leafAreaOf(record: HumidityRecord, house: HumidityHouse): Stage {
  const entries = entriesOf(record, house);
  if (entries.length < FEWEST) {
    throw new InputError(
      `leaf area: ${entries.length} entries with vents shut and a dry cover; expected ${FEWEST} or more`,
    );
  }
  const misfit = (list: readonly Entry[]) => ([leaves]: readonly number[]) =>
    list.map((one) => one.give(Math.max(0, leaves!)) - one.water);
  const fit = fitLeastSquares(misfit(entries), [1]);
  const runs = entries.map(({ place }, k) => place - k);
  const serial = serialOf(misfit(entries)(fit.parameters), runs);
  const sure = certaintyWithTies(fit, entries.length, 1, serial);
  // what an air change that is off by its doubt does; more leaves shade each other, so it is no fixed share
  const more = 1 + (house.airChangeDoubt ?? 0.1);
  const aired = entriesOf(
    { ...record, airChange: record.airChange.map((one) => one * more) },
    house,
  );
  const shift = fitLeastSquares(misfit(aired), fit.parameters).parameters[0]! - fit.parameters[0]!;
  const found = estimateOf(
    { name: "leaf area", key: "house.leafArea", unit: "" },
    fit.parameters[0]!,
    Math.hypot(sure.standardDeviations[0]!, shift),
    Math.hypot(sure.halfWidths[0]!, 1.96 * shift),
  );
  return {
    name: "leaf area",
    estimates: [{ ...found, low: Math.max(0, found.low) }],
    correlation: [[1]],
    used: `${entries.length} entries with vents shut` +
      (record.condensate === undefined ? " and a dry cover" : ", condensate collected"),
    count: entries.length,
    places: entries.map(({ place }) => place),
    cannotTell: [
      record.otherWater === undefined
        ? "What wet floor and beds give off passes for leaves."
        : "What wet floor and beds give off is taken off by the house model; what it is off by passes for leaves.",
      "The leaf area goes with the air change: one that is a tenth too high makes it about a tenth too high.",
      "It is that of these weeks; a crop that grows needs the stage again each month.",
    ],
  };
}

function entriesOf(record: HumidityRecord, house: HumidityHouse): Entry[] {
  const { pressure, dryAirMass, floorArea, crop } = house;
  const ratios = record.inside.map((one, i) => ratioOf(one, record.insideHumidity[i]!, pressure));
  const entries: Entry[] = [];
  for (let i = 1; i < ratios.length - 1; i++) {
    const outside = ratioOf(record.outside[i]!, record.outsideHumidity[i]!, pressure);
    const change = (ratios[i + 1]! - ratios[i - 1]!) / (2 * record.step);
    const collected = record.condensate?.[i] ?? 0;
    const water = dryAirMass * (record.airChange[i]! / HOUR * (ratios[i]! - outside) + change) +
      collected - (record.otherWater?.[i] ?? 0);
    const light = record.light[i]!;
    if (!Number.isFinite(water + light) || (record.vents?.[i] ?? 0) > 0.01) continue;
    if (water / floorArea < LEAST_WATER || record.insideHumidity[i]! > DAMPEST) continue;
    const vapour = vapourPressure(ratios[i]!, pressure);
    const temperature = record.inside[i]!;
    if (record.condensate === undefined && record.cover !== undefined) {
      const atCover = ratioOf(record.cover[i]!, 1, pressure);
      if (!(ratios[i]! < atCover)) continue;
    }
    const full = humidityRatioFromRelativeHumidity(temperature, 1, pressure);
    const deficit = Math.max(0, vapourPressure(full, pressure) - vapour);
    const filmResistance = leafFilmResistance(crop.leafLength, LEAF_DIFFERENCE);
    entries.push({
      place: i,
      water,
      give: (leafArea) => {
        if (leafArea <= 0) return 0;
        const absorbed = light * (1 - Math.exp(-crop.lightExtinction * leafArea));
        const resistance = stomatalResistance({
          lightPerLeaf: absorbed / (2 * leafArea),
          leafTemperature: temperature,
          vapourDeficit: deficit / 1000,
          carbonDioxide: CARBON_DIOXIDE,
        }) / openStomata(temperature);
        return floorArea / HEAT_OF_VAPORISATION * canopyTranspiration({
          absorbedRadiation: absorbed,
          leafArea,
          airTemperature: temperature,
          vapourPressure: vapour,
          pressure,
          filmResistance,
          stomatalResistance: resistance,
        });
      },
    });
  }
  return entries;
}
