/** Is the year sound? @module */
import { type Notice, notice } from "../../basics/mod.ts";
import { type HourlySun, hourlySun } from "../../sun/mod.ts";
import { radiationFaults } from "./quality_radiation.ts";
import { sensorFaults } from "./quality_sensors.ts";
import { describeShifts } from "./shift_words.ts";
import { fitToSun, type MonthFit } from "./sun_shift.ts";
import type { ClimateYear } from "../types.ts";

/** Quality report of a climate year. */
export interface ClimateQuality {
  /** how well the radiation of each month fits the sun */
  readonly fits: readonly MonthFit[];
  /** what was found odd, in words for the report */
  readonly notices: readonly Notice[];
}

/**
 * Looks for what cannot be true or is hardly likely in a year: radiation in the wrong hours, at night
 * or above the light outside the atmosphere, sensors that stand still or jump, a pressure reduced to
 * sea level, wrong units; and says where a climate is no place for stored heat.
 *
 * @param year the climate
 * @param sun its hourly sun, to save working it out again
 * @returns the report
 */
export function climateQuality(year: ClimateYear, sun?: HourlySun): ClimateQuality {
  const hours = sun ?? hourlySun(year.place);
  const fits = fitToSun(year, hours);
  const texts = [
    ...describeShifts(fits, year.globalHorizontal),
    ...radiationFaults(year, hours),
    ...sensorFaults(year),
  ];
  return {
    fits,
    notices: [
      ...texts.map((text) => notice("warning", "climate", text)),
      ...sunless(year, hours),
      ...needless(year),
    ],
  };
}

const DAYS = 365;
/** Days in a row with almost no sun that are worth a word. */
const SUNLESS_DAYS = 10;
/** Share of a clear sky's light below which a day counts as without sun. */
const SUNLESS_SHARE = 0.1;

function sunless(year: ClimateYear, sun: HourlySun): Notice[] {
  let [run, longest, end] = [0, 0, 0];
  // twice round, as a spell may lie across the turn of the year
  for (let count = 0; count < 2 * DAYS; count++) {
    const day = count % DAYS;
    let [seen, outside] = [0, 0];
    for (let hour = day * 24; hour < day * 24 + 24; hour++) {
      seen += year.globalHorizontal[hour]!;
      outside += sun.cosZenith[hour]! * sun.extraterrestrialNormal[hour]!;
    }
    run = seen <= SUNLESS_SHARE * 0.75 * outside ? run + 1 : 0;
    if (run > longest && run <= DAYS) [longest, end] = [run, count];
  }
  if (longest < SUNLESS_DAYS) return [];
  return [notice(
    "warning",
    "climate",
    `${longest} days in a row almost without sun, from day ${
      (end - longest + 1) % DAYS + 1
    } of the year: no heat ` +
      "can be stored then; check the file, and plan back-up heat for the whole spell",
  )];
}

/** Degree-hours below 5 degC under which stored heat has little to do, K h. Common practice, no source. */
const LITTLE_COLD = 1500;

function needless(year: ClimateYear): Notice[] {
  const cold = year.dryBulb.reduce((sum, value) => sum + Math.max(0, 5 - value), 0);
  if (cold >= LITTLE_COLD) return [];
  return [notice(
    "warning",
    "climate",
    `Only ${
      Math.round(cold)
    } degree-hours below 5 degC in the year: a place this warm has little use for ` +
      "stored heat; cooling and shading come first",
  )];
}
