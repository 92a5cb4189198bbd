/** Stage: loss of the house from quiet nights, the heat that the store gives counted in. @module */
import { HOUR } from "../../basics/mod.ts";
import { houseGeometry } from "../../house/mod.ts";
import { type Stage, widened } from "../calibration/estimate.ts";
import { quietNights } from "../calibration/quiet_nights.ts";
import { heatSums } from "../flows/sums.ts";
import { type LoggedHouse, unheld } from "./logged_house.ts";
import type { StagesQuestion } from "./stages_question.ts";

/** h over which the ground around the house follows the weather */
const MONTH = 30 * 24;
/**
 * Standard uncertainty of the heat of the floor over its size: two probes for a whole floor, and none at
 * its surface; common practice, no source.
 */
const FLOOR_DOUBT = 0.3;
/** W/m² of sun below which it is dark */
const DARK = 2;

/** W that the air of the store brings to the house by its temperature, fan included; NaN in gaps. */
function storeHeat({ heat }: LoggedHouse, fanHeats: boolean): Float64Array | null {
  if (heat === null) return null;
  const { heatIn, heatOut, latentIn, latentOut, fanPower } = heat.flows;
  return heatOut.map((out, hour) =>
    out - latentOut[hour]! - heatIn[hour]! + latentIn[hour]! +
    (fanHeats ? fanPower[hour]! : 0)
  );
}

/**
 * W that the floor gives, from the two uppermost probes under it: conduction between them, and what the
 * soil above the middle of them gives up as it cools.
 */
function floorHeat(
  house: LoggedHouse,
  { area, conductivity, heatCapacity }: {
    readonly area: number;
    readonly conductivity: number;
    readonly heatCapacity: number;
  },
): Float64Array | null {
  const [upper, lower] = house.ground.filter(({ zone }) => zone === "floor")
    .sort((a, b) => a.depth - b.depth);
  if (upper === undefined || lower === undefined || !(lower.depth > upper.depth)) return null;
  const middle = (upper.depth + lower.depth) / 2;
  const { values } = upper;
  return values.map((value, hour) => {
    const cooling = (values[hour - 1]! - values[hour + 1]!) / (2 * HOUR);
    const rising = conductivity * (lower.values[hour]! - value) / (lower.depth - upper.depth);
    return area * (rising + heatCapacity * middle * cooling);
  });
}

/** degC that the ground around the house follows: mean outdoors of the month before. */
function monthBefore(outside: Float64Array): Float64Array {
  let [sum, count] = [0, 0];
  return outside.map((value, hour) => {
    if (Number.isFinite(value)) [sum, count] = [sum + value, count + 1];
    const gone = outside[hour - MONTH];
    if (gone !== undefined && Number.isFinite(gone)) [sum, count] = [sum - gone, count - 1];
    return sum / count;
  });
}

/**
 * The quiet nights of a log. Where the heat of the store is metered its hours count too, as those of a
 * heater would; without a heater, a metered store or floor probes only the time constant comes out.
 *
 * @param question log and study
 * @param conductivity W/(m K) of the soil under the floor
 * @throws InputError where the quiet hours are too few
 */
export function nightStage(
  { house, setting, inputs }: StagesQuestion,
  conductivity: number,
): Stage {
  const { inside, outside, sun, wind, heater, vents, curtain } = house.series;
  const store = storeHeat(house, setting.fanHeats);
  const { floorArea } = houseGeometry(inputs);
  const floor = floorHeat(house, {
    area: floorArea,
    conductivity,
    heatCapacity: setting.heatCapacity,
  });
  const count = inside!.length;
  const given = heater ?? new Float64Array(count);
  const running = house.heat?.running;
  const damp = house.series.insideHumidity;
  const stage = quietNights({
    step: HOUR,
    inside: unheld(house, inside!),
    outside: outside!,
    radiation: sun!,
    heater: store === null ? given : given.map((value, hour) => value + store[hour]!),
    ...(store === null && running !== undefined ? { fan: running } : {}),
    // vents that purge damp air are not shut; where nobody logged them the study's limits say when
    vents: vents ?? Float64Array.from(
      { length: count },
      (_, hour) =>
        house.held[hour] === 1 || (damp?.[hour] ?? 0) > inputs.purgeHumidity - PURGE_ROOM ? 1 : 0,
    ),
    ...(curtain === null ? {} : { curtain }),
    // about its mean, so that the loss coefficient is that of these nights' winds
    ...(wind === null ? {} : { wind: aboutMean(wind) }),
    ...(floor === null ? {} : { floorHeat: floor }),
    ground: monthBefore(outside!),
  }, { dark: DARK, commonDoubt: commonDoubt(house, store !== null) });
  const perKelvin = floor === null ? 0 : FLOOR_DOUBT * floorShare(stage.places, floor, house);
  const doubtful = stage.estimates.map((one) =>
    one.name === "loss coefficient" ? widened(one, perKelvin) : one
  );
  return {
    ...stage,
    estimates: doubtful,
    cannotTell: [
      ...stage.cannotTell,
      ...(store === null
        ? []
        : ["The store is the heater here: what its meters are off by goes into UA in full."]),
      "Heat that turns into vapour and comes back on the cover is not apart from UA.",
    ],
  };
}

function aboutMean(values: Float64Array): Float64Array {
  const there = values.filter(Number.isFinite);
  const mean = there.reduce((sum, one) => sum + one, 0) / Math.max(1, there.length);
  return values.map((value) => value - mean);
}

/** W/K that the floor gives in some hours, over the difference of the house to outdoors. */
function floorShare(
  places: readonly number[],
  floor: Float64Array,
  { series }: LoggedHouse,
): number {
  let [heat, difference] = [0, 0];
  for (const place of places) {
    heat += floor[place]!;
    difference += series.inside![place]! - series.outside![place]!;
  }
  return Math.abs(heat / difference);
}

/** Share of humidity below the purge limit from which on the vents may be at work. */
const PURGE_ROOM = 0.02;

/** Doubt in common of heat and difference, as a share. */
function commonDoubt(house: LoggedHouse, byStore: boolean): number {
  const { inside, outside } = house.uncertainty;
  const difference = Math.hypot(inside, outside) / TYPICAL_DIFFERENCE;
  if (!byStore || house.heat === null) return difference;
  const hours = Array.from(house.heat.running, (_, hour) => hour)
    .filter((hour) => house.held[hour] === 0);
  const { heatOut } = heatSums(house.heat, house.covariance, hours);
  const share = (heatOut.high - heatOut.value) / 1.96 / Math.max(1, heatOut.value);
  return Math.hypot(difference, share);
}

/** K between house and outdoors in a quiet night; common practice, no source */
const TYPICAL_DIFFERENCE = 10;
