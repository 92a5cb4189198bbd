/** Does the radiation stand in the right hours? @module */
import { MONTH_DAYS, MONTH_FIRST_HOURS, MONTH_NAMES } from "../../basics/mod.ts";
import { type HourlySun, incidencePath, type RadiationYear } from "../../sun/mod.ts";

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
  /** what was measured: closure of the three series, or global against the sun's height where they close by themselves */
  readonly against: "closure" | "height";
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
 * Source: the closure is that of the quality checks of Long & Dutton 2002 [long-dutton-2002]; the
 * search over hours and its thresholds are our own, tried on published typical years.
 *
 * @param year the radiation of a year, as means of the hour
 * @param sun its hourly sun
 * @returns twelve fits
 */
export function fitToSun(year: RadiationYear, sun: HourlySun): MonthFit[] {
  const cosine = (hour: number) =>
    sun.upShare[hour]! > 0 ? sun.cosZenith[hour]! / sun.upShare[hour]! : 0;
  return fitMonths(
    (inputs) => closureMisfit({ ...inputs, year, cosine }),
    (inputs) => heightMisfit({ ...inputs, year, cosine: (hour) => sun.cosZenith[hour]! }),
  );
}

/**
 * The same for radiation that stands at one moment of each hour, closed with the sun of that moment.
 *
 * @param year the radiation, one value an hour
 * @param sun its hourly sun
 * @param moment hours after the start of the hour, 0 to 1
 * @returns twelve fits
 */
export function fitMomentsToSun(year: RadiationYear, sun: HourlySun, moment: number): MonthFit[] {
  const cosine = (hour: number) => cosineAt(sun, hour, moment);
  return fitMonths((inputs) => closureMisfit({ ...inputs, year, cosine }));
}

/** Height of the sun at a moment of an hour; noon hours give the hour angle, as the sun is up in them. */
function cosineAt(sun: HourlySun, hour: number, moment: number): number {
  const noon = Math.floor(hour / 24) * 24 + 12;
  const angle = (sun.hourAngleStart[noon]! + 15 * (hour - noon + moment)) * Math.PI / 180;
  const path = incidencePath({ tilt: 0, azimuth: 180 }, sun.latitude, sun.declination[hour]!);
  return Math.max(0, path.constant + path.cosine * Math.cos(angle));
}

interface Move {
  /** 0 to 11 */
  readonly month: number;
  /** hours by which the radiation is moved earlier */
  readonly move: number;
}

type Misfit = (inputs: Move) => number;

function fitMonths(closure: Misfit, height: Misfit = closure): MonthFit[] {
  return MONTH_DAYS.map((_, month) => {
    const closesByItself = closure({ month, move: 0 }) < 0.01;
    const measure = closesByItself ? height : closure;
    const gain = closesByItself ? CLEAR_GAIN_OF_HEIGHT : CLEAR_GAIN;
    const misfit = measure({ month, move: 0 });
    const misfitEarlier = measure({ month, move: 1 });
    const misfitLater = measure({ month, move: -1 });
    const best = Math.min(misfitEarlier, misfitLater);
    const shifted = misfit > SMALL_MISFIT && best < gain * misfit;
    const late = !shifted ? 0 : misfitEarlier < misfitLater ? 1 : -1;
    const against = closesByItself ? "height" : "closure";
    return { month: month + 1, misfit, misfitEarlier, misfitLater, late, against };
  });
}

interface FitInputs extends Move {
  readonly year: RadiationYear;
  /** height of the sun for an hour */
  readonly cosine: (hour: number) => number;
}

/** Visits every lit hour of a month, with the height of the sun it is set against. */
function forLitHours(inputs: FitInputs, visit: (hour: number, cosine: number) => void): void {
  const { year, month, move } = inputs;
  const hours = year.globalHorizontal.length;
  for (let hour = MONTH_FIRST_HOURS[month]!; hour < MONTH_FIRST_HOURS[month + 1]!; hour++) {
    const cosine = inputs.cosine((hour - move + hours) % hours);
    if (year.globalHorizontal[hour]! > 0 || cosine > 0) visit(hour, cosine);
  }
}

function closureMisfit(inputs: FitInputs): number {
  const { year } = inputs;
  let [squares, count] = [0, 0];
  forLitHours(inputs, (hour, cosine) => {
    const sum = year.diffuseHorizontal[hour]! + year.directNormal[hour]! * cosine;
    squares += (year.globalHorizontal[hour]! - sum) ** 2;
    count++;
  });
  return count === 0 ? 0 : Math.sqrt(squares / count);
}

function heightMisfit(inputs: FitInputs): number {
  const { year } = inputs;
  let [both, height, global, count] = [0, 0, 0, 0];
  forLitHours(inputs, (hour, cosine) => {
    both += year.globalHorizontal[hour]! * cosine;
    height += cosine * cosine;
    global += year.globalHorizontal[hour]! ** 2;
    count++;
  });
  if (count === 0 || height === 0) return 0;
  return Math.sqrt(Math.max(0, global - both * both / height) / count);
}

/**
 * The months in which radiation stands in the wrong hour, in words.
 *
 * @param fits of twelve months
 * @returns nothing, or a line for late and one for early months
 */
export function describeShifts(fits: readonly MonthFit[]): string[] {
  return ([1, -1] as const).flatMap((late) => {
    const months = fits.filter((fit) => fit.late === late).map((fit) =>
      MONTH_NAMES[fit.month - 1]!
    );
    if (months.length === 0) return [];
    return [
      `Radiation is an hour too ${late === 1 ? "late" : "early"} relative to the sun in ${
        months.length === 12 ? "every month" : months.join(", ")
      }: check whether stamps start or end the hour, summer time and the time zone`,
    ];
  });
}
