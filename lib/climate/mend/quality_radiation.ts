/** Radiation that cannot be. @module */
import { describeHour } from "../../basics/mod.ts";
import type { HourlySun } from "../../sun/mod.ts";
import type { ClimateYear } from "../types.ts";

/** Radiation in the dark that is worth a word, W/m². */
const NIGHT_LIGHT = 10;
/** Height of the sun at mid-hour below which the whole hour is night, degrees: no twilight then. */
const DARK = -8;
/** Height of the sun above which some light comes through the heaviest cloud, degrees. */
const DAYLIGHT = 10;
/** Light there that no sky goes below, W/m². Common practice, no source. */
const LEAST_DAYLIGHT = 1;
/** Hours in a row without light by day that are worth a word. */
const DEAD_RUN = 3;
/** Sums of a year that are hardly likely on the horizontal, kWh/m²; Atacama has about 2700. */
const YEAR_SUMS = [500, 2800] as const;

/**
 * Faults of the radiation: light at night, none by day, more light than the sun gives, parts that do not close,
 * unlikely sums.
 *
 * The upper limit is that of Long & Dutton 2002 [long-dutton-2002], physically possible: global ≤
 * 1.5 E0 cos^1.2 θz + 100 W/m².
 *
 * @param year the climate
 * @param sun its hourly sun
 * @returns a line for each kind of fault
 */
export function radiationFaults(year: ClimateYear, sun: HourlySun): string[] {
  const night: number[] = [];
  const dead: number[] = [];
  const strong: number[] = [];
  const open: number[] = [];
  let total = 0;
  year.globalHorizontal.forEach((global, hour) => {
    total += global / 1000;
    const share = sun.upShare[hour]!;
    const cosine = share > 0 ? sun.cosZenith[hour]! / share : 0;
    const direct = year.directNormal[hour]!;
    const diffuse = year.diffuseHorizontal[hour]!;
    const dark = sun.elevation[hour]! < DARK;
    if (dark && Math.max(global, diffuse, direct) > NIGHT_LIGHT) night.push(hour);
    const limit = 1.5 * sun.extraterrestrialNormal[hour]! * cosine ** 1.2 + 100;
    if (Math.max(global, diffuse) > limit) strong.push(hour);
    if (sun.elevation[hour]! > DAYLIGHT && global < LEAST_DAYLIGHT) dead.push(hour);
    if (Math.abs(global - diffuse - direct * cosine) > Math.max(100, 0.3 * global)) open.push(hour);
  });
  const faults: string[] = [];
  if (night.length > 0) {
    faults.push(`Radiation above ${NIGHT_LIGHT} W/m² at night in ${list(night)}`);
  }
  if (strong.length > 0) faults.push(`Radiation above the physical limit in ${list(strong)}`);
  const dark = inRuns(dead, DEAD_RUN);
  if (dark.length > 0) {
    faults.push(
      `Global radiation is 0 by day in ${list(dark)}: the sensor may have been dead, covered or ` +
        "under snow (years from satellites have such hours under thick cloud); fill them from a " +
        "neighbouring station",
    );
  }
  if (open.length > 0) {
    faults.push(
      `Global radiation does not equal diffuse plus direct horizontal radiation in ${list(open)}`,
    );
  }
  if (total < YEAR_SUMS[0] || total > YEAR_SUMS[1]) {
    faults.push(
      `Global radiation totals ${Math.round(total)} kWh/m² a year: check its unit (${
        YEAR_SUMS[0]
      } to ` +
        `${YEAR_SUMS[1]} is usual)`,
    );
  }
  return faults;
}

/** The hours that stand in runs of at least a length. */
function inRuns(hours: readonly number[], least: number): number[] {
  const starts = hours.filter((hour, index) => hours[index - 1] !== hour - 1);
  const known = new Set(hours);
  return starts.flatMap((start) => {
    let length = 0;
    while (known.has(start + length)) length++;
    return length < least ? [] : Array.from({ length }, (_, step) => start + step);
  });
}

/** "3 hours (first 4 May 02:00)". */
export function list(hours: readonly number[]): string {
  const count = hours.length === 1 ? "1 hour" : `${hours.length} hours`;
  return `${count} (first ${describeHour(hours[0]!)})`;
}
