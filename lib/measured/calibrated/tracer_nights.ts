/** Finds the decays of a tracer in a log, and the air change and weather of each. @module */
import { HOUR } from "../../basics/mod.ts";
import type { LeakageNight } from "../calibration/leakage_law.ts";
import { tracerDecay } from "../calibration/tracer_decay.ts";
import { quantile } from "../log/numbers.ts";
import { type LoggedHouse, seenStep } from "./logged_house.ts";

/** ppm over the usual level from which on a peak is a dose */
const LEAST_DOSE = 500;
/** share of the dose's excess at which a decay is done */
const DONE = 0.05;
/** W/m² of sun below which it is dark, and share that the vents may stand open */
const [DARK, SHUT] = [5, 0.01];
/** share of an air change by which a night may be off the law of means; common practice, no source */
const OFF_LAW = 0.03;
/** fewest readings of a decay */
const FEWEST = 6;

/**
 * Decays in dark hours with shut vents, as far as these are logged, out of the hours that may be seen.
 *
 * @param house log
 * @returns air change of each with its doubt, difference and wind; none without a tracer, or without
 * temperatures inside and out
 */
export function tracerNights(house: LoggedHouse): LeakageNight[] {
  const { tracer, step, series: { inside, outside, wind, sun, vents } } = house;
  if (tracer === null || inside === null || outside === null) return [];
  const { values, accuracy } = tracer;
  const usual = quantile(
    values.filter((one, place) => Number.isFinite(one) && seenStep(house, place)),
    0.5,
  );
  const at = (series: Float64Array | null, place: number) =>
    series === null ? 0 : series[Math.floor(place * step / HOUR)]!;
  const quiet = (place: number) =>
    seenStep(house, place) && Number.isFinite(values[place]!) && at(sun, place) < DARK &&
    at(vents, place) <= SHUT;
  const nights: LeakageNight[] = [];
  for (let peak = 1; peak < values.length; peak++) {
    const dose = values[peak]! - usual;
    if (!(dose > Math.max(LEAST_DOSE, 10 * accuracy)) || !(values[peak + 1]! < values[peak]!)) {
      continue;
    }
    const places: number[] = [];
    let end = peak + 1;
    for (; end < values.length && values[end]! > usual + DONE * dose; end++) {
      if (!quiet(end)) break;
      places.push(end);
    }
    const mean = (series: Float64Array) =>
      places.reduce((sum, place) => sum + at(series, place), 0) / places.length;
    const difference = mean(inside) - mean(outside);
    const blown = wind === null ? 0 : mean(wind);
    if (places.length >= FEWEST && Number.isFinite(difference + blown)) {
      const [rate] = tracerDecay({
        seconds: places.map((place) => place * step),
        concentration: places.map((place) => values[place]!),
        outside: usual,
        outsideUncertainty: accuracy / 4,
      }).estimates;
      nights.push({
        rate: rate!.value,
        uncertainty: Math.hypot(rate!.standardUncertainty, OFF_LAW * rate!.value),
        difference,
        wind: blown,
      });
    }
    peak = end;
  }
  return nights;
}
