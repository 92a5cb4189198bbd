/** The radiation of a placed table made whole. @module */
import { HOURS_PER_YEAR } from "../../basics/mod.ts";
import { type HourlySun, splitGlobal } from "../../sun/mod.ts";
import { findGaps, LONGEST_GAP } from "../gaps.ts";
import { type Completion, listFilled, longGap, tell } from "./fill_gaps.ts";
import { describeShifts, fitMomentsToSun } from "./sun_shift.ts";
import { type HourlyRadiation, shiftRadiation } from "./shift_radiation.ts";

/**
 * Completes the radiation of a year: night set to nothing, global from its parts, short gaps in
 * proportion to the sun, direct and diffuse by the split, moments turned into means.
 *
 * @param context the year in work
 * @returns whole series
 */
export function completeRadiation(context: Completion): HourlyRadiation {
  const { series, sun, layout } = context;
  const missing = () => new Float64Array(HOURS_PER_YEAR).fill(NaN);
  const given = {
    globalHorizontal: series.globalHorizontal?.slice() ?? missing(),
    directNormal: series.directNormal?.slice() ?? missing(),
    diffuseHorizontal: series.diffuseHorizontal?.slice() ?? missing(),
  };
  for (const values of Object.values(given)) cleanNight(values, sun);
  joinParts(given, sun);
  series.globalHorizontal = given.globalHorizontal;
  fillBySun(context, given.globalHorizontal);
  splitWhereMissing(context, given);
  if (layout.radiationMoment === 0.5) return given;
  const fits = fitMomentsToSun(given, sun, layout.radiationMoment);
  for (const text of describeShifts(fits)) tell(context, text, "warning");
  return shiftRadiation({ ...given, moment: layout.radiationMoment, place: layout.place, sun });
}

/** Missing and slightly negative values become 0 at night; negatives by day too. */
function cleanNight(values: Float64Array, sun: HourlySun): void {
  for (let hour = 0; hour < values.length; hour++) {
    if (Number.isNaN(values[hour]!) && sun.upShare[hour] === 0) values[hour] = 0;
    else if (values[hour]! < 0) values[hour] = 0;
  }
}

/** Global from its parts where only the parts are given. */
function joinParts(given: HourlyRadiation, sun: HourlySun): void {
  for (let hour = 0; hour < given.globalHorizontal.length; hour++) {
    if (!Number.isNaN(given.globalHorizontal[hour]!)) continue;
    const share = sun.upShare[hour]!;
    const cosine = share > 0 ? sun.cosZenith[hour]! / share : 0;
    given.globalHorizontal[hour] = given.diffuseHorizontal[hour]! +
      given.directNormal[hour]! * cosine;
  }
}

/** Fills short gaps of the global radiation in proportion to the sun's height. */
function fillBySun(context: Completion, global: Float64Array): void {
  const { sun } = context;
  const runs = findGaps((hour) => Number.isNaN(global[hour]!));
  for (const run of runs) {
    if (run.length > LONGEST_GAP) {
      longGap(context, "globalHorizontal", run);
      continue;
    }
    const around = [
      run.start - 2,
      run.start - 1,
      run.start + run.length,
      run.start + run.length + 1,
    ]
      .map((hour) => (hour + HOURS_PER_YEAR) % HOURS_PER_YEAR)
      .filter((hour) => sun.cosZenith[hour]! > 0.02 && !Number.isNaN(global[hour]!));
    const seen = around.reduce((sum, hour) => sum + global[hour]!, 0);
    const height = around.reduce((sum, hour) => sum + sun.cosZenith[hour]!, 0);
    for (let hour = run.start; hour < run.start + run.length; hour++) {
      global[hour] = height > 0 ? seen / height * sun.cosZenith[hour]! : 0;
    }
  }
  listFilled(context, "globalHorizontal", runs.filter((run) => run.length <= LONGEST_GAP));
}

/** Direct and diffuse from the global, or one of them from the two others. */
function splitWhereMissing(context: Completion, given: HourlyRadiation): void {
  const { sun } = context;
  let modelled = 0;
  for (let hour = 0; hour < given.globalHorizontal.length; hour++) {
    const global = given.globalHorizontal[hour]!;
    const noDirect = Number.isNaN(given.directNormal[hour]!);
    const noDiffuse = Number.isNaN(given.diffuseHorizontal[hour]!);
    if (!noDirect && !noDiffuse) continue;
    const share = sun.upShare[hour]!;
    const cosZenith = share > 0 ? sun.cosZenith[hour]! / share : 0;
    if (noDirect && !noDiffuse) {
      const beam = Math.max(0, global - given.diffuseHorizontal[hour]!);
      const most = sun.extraterrestrialNormal[hour]! * share;
      given.directNormal[hour] = cosZenith > 0.02 ? Math.min(most, beam / cosZenith) : 0;
    } else if (!noDirect) {
      given.diffuseHorizontal[hour] = Math.max(0, global - given.directNormal[hour]! * cosZenith);
    } else {
      const split = splitGlobal({
        globalHorizontal: global,
        cosZenith,
        upShare: share,
        extraterrestrialNormal: sun.extraterrestrialNormal[hour]!,
      });
      given.directNormal[hour] = split.directNormal;
      given.diffuseHorizontal[hour] = split.diffuseHorizontal;
      modelled++;
    }
  }
  if (modelled === 0) return;
  tell(
    context,
    `Direct and diffuse radiation computed from the global radiation in ${modelled} hours ` +
      "(Erbs, Klein & Duffie 1982)",
  );
}
