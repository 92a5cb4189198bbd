/** Does the radiation stand in the right hours? @module */
import { MONTH_DAYS } from "../basics/mod.ts";
import type { HourlySun } from "../sun/mod.ts";
import { MONTH_STARTS } from "./calendar.ts";
import type { ClimateYear } from "./types.ts";

/** How well the radiation of a month fits the sun, and how it would an hour earlier or later. */
export interface MonthFit {
  /** 1 to 12 */
  readonly month: number;
  /** root mean square of the misfit in lit hours, W/m² */
  readonly misfit: number;
  /** the same with the radiation moved an hour earlier */
  readonly misfitEarlier: number;
  /** the same with the radiation moved an hour later */
  readonly misfitLater: number;
  /** hours the radiation of the file is late against the sun: -1, 0 or 1 */
  readonly late: -1 | 0 | 1;
}

/** Misfit below which a month is never called shifted, W/m². */
const SMALL_MISFIT = 12;
/** A shift must bring the misfit below this share: of the closure, and of the fit to the sun's height. */
const CLEAR_GAIN = 0.6;
const CLEAR_GAIN_OF_HEIGHT = 0.95;

/**
 * Fits the radiation of each month to the sun: closes global = diffuse + direct · cos θz with the
 * sun averaged over the hour, as the file stands and moved by an hour either way.
 *
 * Where direct and diffuse follow from the global (so that they close by themselves), the global
 * radiation is fitted to the sun's height instead: the misfit about the best multiple of cos θz.
 *
 * Source: the closure is that of the quality checks of C. N. Long, E. G. Dutton, "BSRN global network
 * recommended QC tests" (2002); the search over hours and its thresholds are our own, tried on
 * published typical years.
 *
 * @param year the climate
 * @param sun its hourly sun
 * @returns twelve fits
 */
export function fitToSun(year: ClimateYear, sun: HourlySun): MonthFit[] {
  return MONTH_DAYS.map((_, month) => {
    const closure = [0, 1, -1].map((move) => closureMisfit({ year, sun, month, move }));
    const closesByItself = closure[0]! < 0.01;
    const misfits = closesByItself
      ? [0, 1, -1].map((move) => heightMisfit({ year, sun, month, move }))
      : closure;
    const [misfit, misfitEarlier, misfitLater] = misfits as [number, number, number];
    const gain = closesByItself ? CLEAR_GAIN_OF_HEIGHT : CLEAR_GAIN;
    const best = Math.min(misfitEarlier, misfitLater);
    const shifted = misfit > SMALL_MISFIT && best < gain * misfit;
    const late = !shifted ? 0 : misfitEarlier < misfitLater ? 1 : -1;
    return { month: month + 1, misfit, misfitEarlier, misfitLater, late };
  });
}

interface FitInputs {
  readonly year: ClimateYear;
  readonly sun: HourlySun;
  readonly month: number;
  /** hours by which the radiation is moved earlier */
  readonly move: number;
}

/** Calls back with global, diffuse, direct and the sun's hour for every lit hour of a month. */
function forLitHours(inputs: FitInputs, visit: (hour: number, sunHour: number) => void): void {
  const { year, sun, month, move } = inputs;
  const hours = year.globalHorizontal.length;
  for (let hour = MONTH_STARTS[month]!; hour < MONTH_STARTS[month + 1]!; hour++) {
    const sunHour = (hour - move + hours) % hours;
    if (year.globalHorizontal[hour]! > 0 || sun.upShare[sunHour]! > 0) visit(hour, sunHour);
  }
}

function closureMisfit(inputs: FitInputs): number {
  const { year, sun } = inputs;
  let [squares, count] = [0, 0];
  forLitHours(inputs, (hour, sunHour) => {
    const share = sun.upShare[sunHour]!;
    const cosine = share > 0 ? sun.cosZenith[sunHour]! / share : 0;
    const sum = year.diffuseHorizontal[hour]! + year.directNormal[hour]! * cosine;
    squares += (year.globalHorizontal[hour]! - sum) ** 2;
    count++;
  });
  return count === 0 ? 0 : Math.sqrt(squares / count);
}

function heightMisfit(inputs: FitInputs): number {
  const { year, sun } = inputs;
  let [both, height, global, count] = [0, 0, 0, 0];
  forLitHours(inputs, (hour, sunHour) => {
    const cosine = sun.cosZenith[sunHour]!;
    both += year.globalHorizontal[hour]! * cosine;
    height += cosine * cosine;
    global += year.globalHorizontal[hour]! ** 2;
    count++;
  });
  if (count === 0 || height === 0) return 0;
  return Math.sqrt(Math.max(0, global - both * both / height) / count);
}
