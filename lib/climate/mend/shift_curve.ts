/** How far radiation is off the sun, over the hours by which it might stand wrong. @module */
import { HOURS_PER_YEAR, MONTH_FIRST_HOURS } from "../../basics/mod.ts";
import type { HourlySun, RadiationYear } from "../../sun/mod.ts";

/** Height of the sun an hour's radiation is set against. */
export interface SunHeight {
  /** cosine of the zenith angle while the sun is up; 0 at night */
  readonly cosine: Float64Array;
  /** share of the hour the sun is up */
  readonly share: Float64Array;
  /** radiation outside the atmosphere on the horizontal, W/m² */
  readonly outside: Float64Array;
}

/** Misfit of one month by the hours its radiation is moved earlier, from -12 to 11. */
export interface ShiftCurve {
  /** mean squares, W²/m⁴; entry {@link AS_READ} is that of the file as it stands */
  readonly squares: Float64Array;
  /** mean square of the global radiation in the same hours, W²/m⁴ */
  readonly size: number;
  /** mean square that a sun below the horizon all day would leave, W²/m⁴ */
  readonly blind: number;
}

/** Moves tried: a day round. */
const MOVES = 24;
/** Entry of a curve that stands for no move. */
export const AS_READ = 12;

/** The sun over whole hours. */
export function heightOfHours(sun: HourlySun): SunHeight {
  const cosine = sun.cosZenith.map((mean, hour) =>
    sun.upShare[hour]! > 0 ? mean / sun.upShare[hour]! : 0
  );
  return { cosine, share: sun.upShare, outside: outsideOf(sun) };
}

/** W/m² outside the atmosphere on the horizontal. */
export function outsideOf(sun: HourlySun): Float64Array {
  return sun.cosZenith.map((mean, hour) => mean * sun.extraterrestrialNormal[hour]!);
}

/**
 * Misfit of global = diffuse + direct · cos θz in the lit hours of a month; hours in which one of the
 * three is missing are left out.
 */
export function closureCurve(year: RadiationYear, sun: SunHeight, month: number): ShiftCurve {
  const squares = new Float64Array(MOVES);
  let [size, blind] = [0, 0];
  for (let entry = 0; entry < MOVES; entry++) {
    let [total, global, beam, count] = [0, 0, 0, 0];
    forHours(month, (hour) => {
      const cosine = sun.cosine[wrapped(hour - entry + AS_READ)]!;
      const whole = year.globalHorizontal[hour]!;
      const error = whole - year.diffuseHorizontal[hour]! - year.directNormal[hour]! * cosine;
      if (Number.isNaN(error) || !(whole > 0 || cosine > 0)) return;
      total += error * error;
      global += whole * whole;
      beam += (whole - year.diffuseHorizontal[hour]!) ** 2;
      count++;
    });
    squares[entry] = count === 0 ? 0 : total / count;
    if (entry === AS_READ && count > 0) [size, blind] = [global / count, beam / count];
  }
  return { squares, size, blind };
}

/** Clearest days of a month that are looked at. */
const CLEAR_DAYS = 6;
/** Light of a day below which nothing can be said, Wh/m². */
const LEAST_LIGHT = 100;

/**
 * Misfit of the global radiation of the clearest days of a month about the best multiple of a clear
 * day's shape, cos θz exp(-0.059 / cos θz).
 *
 * Source of the shape: Haurwitz 1945 [haurwitz-1945], as public code has it. Clear days are even about noon, cloudy months are not.
 */
export function clearDayCurve(year: RadiationYear, sun: SunHeight, month: number): ShiftCurve {
  const days = clearestDays(year.globalHorizontal, sun.outside, month);
  const squares = new Float64Array(MOVES);
  const lit = days.reduce((sum, { light }) => sum + light, 0);
  if (lit < LEAST_LIGHT * days.length || days.length === 0) return { squares, size: 0, blind: 0 };
  const shape = sun.cosine.map((cosine, hour) => clearShape(cosine) * sun.share[hour]!);
  const global = days.map(({ start }) => year.globalHorizontal.subarray(start, start + 24));
  const hours = global.reduce((sum, day) => sum + day.filter((value) => value > 0).length, 0);
  for (let entry = 0; entry < MOVES; entry++) {
    const misfits = days.map(({ start }, day) =>
      misfitOfDay(global[day]!, shape, start - entry + AS_READ)
    );
    squares[entry] = misfits.reduce((sum, value) => sum + value, 0) / hours;
  }
  const size = global.reduce((sum, day) => sum + day.reduce((a, b) => a + b * b, 0), 0) / hours;
  return { squares, size, blind: size };
}

function clearShape(cosine: number): number {
  return cosine <= 0 ? 0 : cosine * Math.exp(-0.059 / cosine);
}

interface Day {
  /** its first hour */
  readonly start: number;
  /** Wh/m² */
  readonly light: number;
}

function clearestDays(global: Float64Array, outside: Float64Array, month: number): Day[] {
  const days: (Day & { readonly clearness: number })[] = [];
  const [first, last] = [MONTH_FIRST_HOURS[month]!, MONTH_FIRST_HOURS[month + 1]!];
  for (let start = first; start < last; start += 24) {
    let [light, most] = [0, 0];
    for (let hour = start; hour < start + 24; hour++) {
      light += global[hour]!;
      most += outside[hour]!;
    }
    if (light > 0 && most > 0) days.push({ start, light, clearness: light / most });
  }
  return days.sort((a, b) => b.clearness - a.clearness).slice(0, CLEAR_DAYS);
}

/** Sum of squares about the best multiple of the shape that starts at an hour of the year. */
function misfitOfDay(global: Float64Array, shape: Float64Array, from: number): number {
  let [both, height, whole] = [0, 0, 0];
  global.forEach((value, hour) => {
    const part = shape[wrapped(from + hour)]!;
    both += value * part;
    height += part * part;
    whole += value * value;
  });
  return height === 0 ? whole : Math.max(0, whole - both * both / height);
}

function forHours(month: number, visit: (hour: number) => void): void {
  const [first, last] = [MONTH_FIRST_HOURS[month]!, MONTH_FIRST_HOURS[month + 1]!];
  for (let hour = first; hour < last; hour++) visit(hour);
}

function wrapped(hour: number): number {
  return (hour + HOURS_PER_YEAR) % HOURS_PER_YEAR;
}
