/** Radiation in the wrong hours, in words. @module */
import { MONTH_NAMES } from "../../basics/mod.ts";
import { showBoth, showSi } from "../../units/mod.ts";
import { certainMoves, movedEnergy } from "./move_radiation.ts";
import type { MonthFit } from "./sun_shift.ts";

/**
 * The months in which radiation stands in the wrong hour, in words, latest first, each with what to do.
 *
 * @param fits of twelve months
 * @param global global radiation of the year, W/m²
 * @returns nothing, or a line for each lag or lead
 */
export function describeShifts(fits: readonly MonthFit[], global: Float64Array): string[] {
  const moves = certainMoves(fits);
  const sizes = [...new Set(fits.map(({ late }) => late))].filter((late) => late !== 0)
    .sort((a, b) => b - a);
  return sizes.map((late) => {
    const months = fits.filter((fit) => fit.late === late);
    return `Radiation is ${hoursText(Math.abs(late))} too ${late > 0 ? "late" : "early"} ` +
      `relative to the sun in ${
        monthsText(months.map(({ month }) => month))
      }: check whether stamps ` +
      `start or end the hour, ${summerText(months)} and the time zone` +
      offer(months, moves, global);
  });
}

/** "an hour", "half an hour", "2 hours". */
export function hoursText(hours: number): string {
  if (hours === 0.5) return "half an hour";
  return hours === 1 ? "an hour" : `${hours} hours`;
}

/** "every month", or the names of the months. */
export function monthsText(months: readonly number[]): string {
  if (months.length === 12) return "every month";
  return months.map((month) => MONTH_NAMES[month - 1]).join(", ");
}

/** "312.3 kWh/m² (99.0 kBtu/ft²) of 1406.1 kWh/m² a year": what a move puts into other hours. */
export function energyText(global: Float64Array, moves: readonly number[]): string {
  const whole = global.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : value), 0) / 1000;
  const moved = showBoth(movedEnergy(global, moves), "radiation");
  return `${moved} of ${showSi(whole, "radiation")} a year`;
}

function offer(
  months: readonly MonthFit[],
  moves: readonly number[],
  global: Float64Array,
): string {
  const here = moves.map((move, month) => months.some((fit) => fit.month === month + 1) ? move : 0);
  if (here.every((move) => move === 0)) {
    return months.some(({ late }) => Math.abs(late) >= 1)
      ? "; too few months agree to be certain, as only global radiation was measured"
      : "";
  }
  return "; if the file cannot be corrected, climate.mendShift: yes in the study moves the " +
    `radiation back by ${hoursText(Math.abs(here.find((move) => move !== 0)!))}: ` +
    `${energyText(global, here)} would then be in a different hour`;
}

/** Months in which clocks show summer time in the north. */
const SUMMER = [3, 4, 5, 6, 7, 8, 9, 10, 11];

/** Summer time, with the key that mends it where the months are those of summer time. */
function summerText(months: readonly MonthFit[]): string {
  const late = months.every((fit) => fit.late === 1 && SUMMER.includes(fit.month));
  if (!late || months.length < 5) return "daylight-saving time";
  return "above all daylight-saving time (daylightSaving: yes in the columns file)";
}
