/** The radiation of a placed table made whole. @module */
import { HOURS_PER_YEAR, monthOfHour } from "../../basics/mod.ts";
import { type HourlySun, splitGlobal } from "../../sun/mod.ts";
import { findGaps, LONGEST_GAP } from "../gaps.ts";
import { type Completion, listFilled, longGap, tell } from "./fill_gaps.ts";
import { certainMoves } from "./move_radiation.ts";
import { cleanNight, fitRaw, joinParts, moveBack } from "./raw_radiation.ts";
import { describeShifts } from "./shift_words.ts";
import { type HourlyRadiation, shiftRadiation } from "./shift_radiation.ts";

/** Radiation of a whole year, and the months in which it closes because it was made so. */
export interface CompletedRadiation extends HourlyRadiation {
  /** months (1 to 12) with direct or diffuse radiation worked out in more than half of the lit hours */
  readonly derivedMonths: readonly number[];
}

/**
 * Completes the radiation of a year: moved back to its hours where asked and certain, night set to
 * nothing, global from its parts, short gaps in proportion to the sun, direct and diffuse by the
 * split, moments turned into means.
 *
 * @param context the year in work
 * @returns whole series
 */
export function completeRadiation(context: Completion): CompletedRadiation {
  const { series, sun, layout } = context;
  const raw = rawRadiation(context);
  const derivedMonths = monthsDerived(raw, sun);
  const moments = layout.radiationMoment !== 0.5;
  const fits = moments || context.mendShift ? fitRaw(context, raw, derivedMonths) : [];
  const given = context.mendShift ? moveBack(context, raw, fits) : raw;
  for (const values of Object.values(given)) cleanNight(values, sun);
  joinParts(given, sun);
  series.globalHorizontal = given.globalHorizontal;
  fillBySun(context, given.globalHorizontal);
  splitWhereMissing(context, given);
  if (!moments) return { ...given, derivedMonths };
  const moves = certainMoves(fits);
  const left = context.mendShift ? fits.filter(({ month }) => moves[month - 1] === 0) : fits;
  for (const text of describeShifts(left, given.globalHorizontal)) tell(context, text, "warning");
  const means = shiftRadiation({
    ...given,
    moment: layout.radiationMoment,
    place: layout.place,
    sun,
  });
  return { ...means, derivedMonths };
}

/** The three series as the file has them; all missing where it has none. */
function rawRadiation({ series }: Completion): HourlyRadiation {
  const missing = () => new Float64Array(HOURS_PER_YEAR).fill(NaN);
  return {
    globalHorizontal: series.globalHorizontal?.slice() ?? missing(),
    directNormal: series.directNormal?.slice() ?? missing(),
    diffuseHorizontal: series.diffuseHorizontal?.slice() ?? missing(),
  };
}

/** Months in which more than half of the lit hours lack one of the three series. */
function monthsDerived(raw: HourlyRadiation, sun: HourlySun): number[] {
  const lacking = new Float64Array(12);
  sun.upShare.forEach((share, hour) => {
    if (share === 0) return;
    const short = Object.values(raw).some((values) => Number.isNaN(values[hour]!));
    lacking[monthOfHour(hour)]! += short ? 1 : -1;
  });
  return [...lacking.keys()].filter((month) => lacking[month]! > 0).map((month) => month + 1);
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
