/** The radiation of a file before anything is filled in: night, parts, and the hours it stands in. @module */
import type { HourlySun } from "../../sun/mod.ts";
import { type Completion, tell } from "./fill_gaps.ts";
import { certainMoves, moveSeries } from "./move_radiation.ts";
import type { HourlyRadiation } from "./shift_radiation.ts";
import { energyText, hoursText, monthsText } from "./shift_words.ts";
import { fitMomentsToSun, fitToSun, type MonthFit } from "./sun_shift.ts";

/** Missing and slightly negative values become 0 at night; negatives by day too. */
export function cleanNight(values: Float64Array, sun: HourlySun): void {
  for (let hour = 0; hour < values.length; hour++) {
    if (Number.isNaN(values[hour]!) && sun.upShare[hour] === 0) values[hour] = 0;
    else if (values[hour]! < 0) values[hour] = 0;
  }
}

/** Global from its parts where only the parts are given. */
export function joinParts(given: HourlyRadiation, sun: HourlySun): void {
  for (let hour = 0; hour < given.globalHorizontal.length; hour++) {
    if (!Number.isNaN(given.globalHorizontal[hour]!)) continue;
    const share = sun.upShare[hour]!;
    const cosine = share > 0 ? sun.cosZenith[hour]! / share : 0;
    given.globalHorizontal[hour] = given.diffuseHorizontal[hour]! +
      given.directNormal[hour]! * cosine;
  }
}

/** How the radiation of the file fits the sun, before anything is filled in. */
export function fitRaw(
  { sun, layout }: Completion,
  raw: HourlyRadiation,
  derivedMonths: readonly number[],
): MonthFit[] {
  const copy = {
    globalHorizontal: raw.globalHorizontal.slice(),
    directNormal: raw.directNormal.slice(),
    diffuseHorizontal: raw.diffuseHorizontal.slice(),
  };
  for (const values of Object.values(copy)) cleanNight(values, sun);
  joinParts(copy, sun);
  const year = { ...copy, derivedMonths };
  return layout.radiationMoment === 0.5
    ? fitToSun(year, sun)
    : fitMomentsToSun(year, sun, layout.radiationMoment);
}

/** The series moved by whole hours in the months that are certainly shifted, and told. */
export function moveBack(
  context: Completion,
  raw: HourlyRadiation,
  fits: readonly MonthFit[],
): HourlyRadiation {
  const moves = certainMoves(fits);
  const sizes = [...new Set(moves)].filter((move) => move !== 0).sort((a, b) => b - a);
  if (sizes.length === 0) {
    tell(
      context,
      "climate.mendShift is yes, but no month's radiation is in the wrong hours with " +
        "certainty: nothing was moved",
    );
    return raw;
  }
  const global = { ...raw, globalHorizontal: raw.globalHorizontal.slice() };
  joinParts(global, context.sun);
  for (const size of sizes) {
    const months = [...moves.keys()].filter((month) => moves[month] === size);
    const here = moves.map((move) => move === size ? move : 0);
    tell(
      context,
      `Radiation moved ${hoursText(Math.abs(size))} ${size > 0 ? "earlier" : "later"} in ` +
        `${monthsText(months.map((month) => month + 1))} (climate.mendShift): ` +
        `${energyText(global.globalHorizontal, here)} are now in a different hour. Temperature, ` +
        "humidity and wind stay as in the file: if its clock was wrong, they are wrong too",
      "warning",
    );
  }
  return {
    globalHorizontal: moveSeries(raw.globalHorizontal, moves),
    directNormal: moveSeries(raw.directNormal, moves),
    diffuseHorizontal: moveSeries(raw.diffuseHorizontal, moves),
  };
}
