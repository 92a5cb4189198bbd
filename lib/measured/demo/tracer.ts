/** Nights on which a tracer gas was let out in the made-up winter, and how it thins out. @module */
import { DAY, HOUR, YEAR } from "../../basics/mod.ts";
import { TRUE_STEP, type TrueYear } from "./true_year.ts";

/** ppm outdoors, and in the house in all other nights */
export const TRACER_OUTSIDE = 420;
/** ppm in the house when the dosing ends */
const DOSE = 3000;
/** hour of the evening at which it ends, and h for which the vents must stay shut */
const [EVENING, SHUT] = [20, 8];
/** days from one tracer night to the earliest next */
const APART = 13;

/**
 * Concentration of the tracer, mean of each interval of the true year: in the first evening of each
 * fortnight whose vents stay shut the gas is let out, and thins with the true air change.
 *
 * @param year true year
 * @param time s of the year at which the log begins, and s that it lasts
 * @returns ppm
 */
export function tracerSeries(
  { airChange, vents }: Pick<TrueYear, "airChange" | "vents">,
  { from, lasts }: { readonly from: number; readonly lasts: number },
): Float64Array {
  const count = YEAR / TRUE_STEP;
  const series = new Float64Array(count).fill(TRACER_OUTSIDE);
  let next = 2;
  for (let day = 0; day < lasts / DAY - 1; day++) {
    const first = Math.round((from + day * DAY + EVENING * HOUR) / TRUE_STEP);
    const shut = Array.from({ length: SHUT * HOUR / TRUE_STEP }, (_, k) => (first + k) % count)
      .every((place) => vents[place]! === 0);
    if (day < next || !shut) continue;
    next = day + APART;
    let excess = DOSE - TRACER_OUTSIDE;
    for (let k = 0; excess > 1; k++) {
      const place = (first + k) % count;
      const left = excess * Math.exp(-airChange[place]! * TRUE_STEP / HOUR);
      // mean of an exponential over the interval
      series[place]! += (excess - left) / Math.log(excess / left);
      excess = left;
    }
  }
  return series;
}
