/** Does the radiation stand in the right hours? @module */
import { HOURS_PER_YEAR, MONTH_DAYS } from "../../basics/mod.ts";
import {
  hourAngleAtMidnight,
  type HourlySun,
  incidencePath,
  type RadiationYear,
} from "../../sun/mod.ts";
import {
  AS_READ,
  clearDayCurve,
  closureCurve,
  heightOfHours,
  outsideOf,
  type ShiftCurve,
  type SunHeight,
} from "./shift_curve.ts";

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
  /** hours the radiation of the file is late against the sun, to half an hour; below 0 where early */
  readonly late: number;
  /**
   * what was measured: closure of the three series, or, where they close by themselves, the global
   * radiation of the clearest days against the height of the sun
   */
  readonly against: "closure" | "height";
}

/** A year of radiation, and the months in which its parts follow from each other. */
export type JudgedRadiation = RadiationYear & {
  /**
   * months (1 to 12) whose three series close by themselves, as one or two of them are worked out
   * from the rest; where absent, those whose misfit is next to nothing
   */
  readonly derivedMonths?: readonly number[];
};

/** When a month is called shifted. Own choice, tried on published typical years. */
interface Rule {
  /** least misfit as a share of the month's radiation (root mean squares) */
  readonly least: number;
  /** share of the misfit, and of that without any sun, that may be left after the move */
  readonly gain: number;
  /** misfit after the move, as a share of the radiation, up to which half hours can be told */
  readonly sharp: number;
}

const CLOSURE: Rule = { least: 0.03, gain: 0.6, sharp: 0.1 };
const HEIGHT: Rule = { least: 0.03, gain: 0.9, sharp: 0.15 };
/** Misfit that rounding to whole W/m² may make, W/m². */
const ROUNDING = 1;
/** Misfit below which three series close because they were made so, W/m². */
const CLOSES = 0.01;

/**
 * Fits the radiation of each month to the sun: closes global = diffuse + direct · cos θz with the
 * sun averaged over the hour, as the file stands and moved by up to half a day either way.
 *
 * Where direct or diffuse follow from the global, and where all light is diffuse, closure proves nothing; then the global radiation of
 * the month's six clearest days is fitted to the shape of a clear day. Lag and lead are read from the
 * lowest misfit and its two neighbours (a parabola through the squares), to half an hour where the fit
 * is sharp and to a whole hour where it is not. Limits are relative to the month's radiation, so that
 * dark months are judged like bright ones; where the clearest days bring less than 0.1 kWh/m² nothing
 * is said.
 *
 * Source: the closure is that of the quality checks of Long & Dutton 2002 [long-dutton-2002]; the
 * search over hours and its thresholds are our own, tried on published typical years.
 *
 * @param year the radiation of a year, as means of the hour
 * @param sun its hourly sun
 * @returns twelve fits
 */
export function fitToSun(year: JudgedRadiation, sun: HourlySun): MonthFit[] {
  return fitMonths(year, heightOfHours(sun));
}

/**
 * The same for radiation that stands at one moment of each hour, fitted to the sun of that moment.
 *
 * @param year the radiation, one value an hour
 * @param sun its hourly sun
 * @param moment hours after the start of the hour, 0 to 1
 * @returns twelve fits
 */
export function fitMomentsToSun(year: JudgedRadiation, sun: HourlySun, moment: number): MonthFit[] {
  const cosine = new Float64Array(HOURS_PER_YEAR);
  for (let start = 0; start < HOURS_PER_YEAR; start += 24) {
    const midnight = hourAngleAtMidnight(sun, start / 24);
    for (let hour = start; hour < start + 24; hour++) {
      const angle = (midnight + 15 * (hour - start + moment)) * Math.PI / 180;
      const path = incidencePath({ tilt: 0, azimuth: 180 }, sun.latitude, sun.declination[hour]!);
      cosine[hour] = Math.max(0, path.constant + path.cosine * Math.cos(angle));
    }
  }
  const share = cosine.map((value) => value > 0 ? 1 : 0);
  return fitMonths(year, { cosine, share, outside: outsideOf(sun) });
}

function fitMonths(year: JudgedRadiation, sun: SunHeight): MonthFit[] {
  return MONTH_DAYS.map((_, month) => {
    const closure = closureCurve(year, sun, month);
    const byItself = year.derivedMonths?.includes(month + 1) ??
      closure.squares[AS_READ]! < CLOSES ** 2;
    const unseen = byItself || cannotSee(closure);
    const curve = unseen ? clearDayCurve(year, sun, month) : closure;
    return {
      month: month + 1,
      misfit: Math.sqrt(curve.squares[AS_READ]!),
      misfitEarlier: Math.sqrt(curve.squares[AS_READ + 1]!),
      misfitLater: Math.sqrt(curve.squares[AS_READ - 1]!),
      late: lateness(curve, unseen ? HEIGHT : CLOSURE),
      against: unseen ? "height" : "closure",
    };
  });
}

/** True where an hour's move hardly changes the closure, as where all light is diffuse. */
function cannotSee({ squares, size }: ShiftCurve): boolean {
  const moved = Math.max(squares[AS_READ - 1]!, squares[AS_READ + 1]!);
  return moved <= noise(size, CLOSURE);
}

/** Mean square of a misfit that means nothing, W²/m⁴. */
function noise(size: number, rule: Rule): number {
  return Math.max(ROUNDING ** 2, rule.least ** 2 * size);
}

/** Hours the radiation is late, from the lowest point of the curve; 0 where nothing can be said. */
function lateness({ squares, size, blind }: ShiftCurve, rule: Rule): number {
  const asRead = squares[AS_READ]!;
  if (asRead <= noise(size, rule)) return 0;
  const lowest = squares.indexOf(squares.reduce((least, value) => Math.min(least, value)));
  const at = (entry: number) => squares[(entry + squares.length) % squares.length]!;
  const [left, middle, right] = [at(lowest - 1), at(lowest), at(lowest + 1)];
  const bend = left - 2 * middle + right;
  const step = bend > 0 ? (left - right) / (2 * bend) : 0;
  const remaining = bend > 0 ? Math.max(0, middle - (left - right) ** 2 / (8 * bend)) : middle;
  if (remaining >= rule.gain ** 2 * Math.min(asRead, blind)) return 0;
  const late = lowest - AS_READ + step;
  const sharp = remaining < rule.sharp ** 2 * size;
  return sharp && isHalf(late) ? Math.floor(late) + 0.5 : Math.round(late);
}

/** Share of an hour about its middle that is called half an hour. */
const HALF = 0.15;

function isHalf(hours: number): boolean {
  return Math.abs(hours - Math.floor(hours) - 0.5) < HALF;
}
