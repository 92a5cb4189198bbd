/** Which hours of a log are dark and quiet. @module */
import { HOUR } from "../../basics/mod.ts";

/** Series of one length and step; gaps are not numbers. Left out: not logged. */
export interface HouseRecord {
  /** s between entries */
  readonly step: number;
  /** degC of the house air */
  readonly inside: Float64Array;
  /** degC outdoors */
  readonly outside: Float64Array;
  /** W/m² of sun on the horizontal */
  readonly radiation: Float64Array;
  /** W that the heater gives; 0 where there is none */
  readonly heater: Float64Array;
  /** 0 while the store's fan rests, else its mode or power, any one unit */
  readonly fan?: Float64Array;
  /** 0 to 1, how far the vents stand open */
  readonly vents?: Float64Array;
  /** 0 to 1, how far the curtain is closed */
  readonly curtain?: Float64Array;
  /** m/s of wind */
  readonly wind?: Float64Array;
  /** W/m² that a level surface as warm as the outdoor air loses to the sky, 0 or more */
  readonly skyLoss?: Float64Array;
  /** W that the floor gives to the air, by heat flow plates, or by film, area and surface temperature */
  readonly floorHeat?: Float64Array;
  /** degC that the ground around the house follows, such as the past month's mean outdoors */
  readonly ground?: Float64Array;
}

/** What counts as quiet. */
export interface QuietRule {
  /** h of dark, shut vents and a resting fan before an hour counts; 3 unless given */
  readonly settled?: number;
  /** W/m² of sun below which it is dark; 2 unless given */
  readonly dark?: number;
  /** K that the house must be warmer than outside; 3 unless given */
  readonly leastDifference?: number;
  /** which curtain: "open", "shut" or "any"; "any" unless given */
  readonly curtain?: "open" | "shut" | "any";
  /** first entry that counts and the one after the last, index from 0; all unless given */
  readonly from?: number;
  /** index after the last */
  readonly to?: number;
}

/** Quiet entries and the night each belongs to. */
export interface QuietHours {
  /** places in the record, index from 0 */
  readonly places: readonly number[];
  /** number of the night of each place, from 0 */
  readonly nights: readonly number[];
}

/**
 * Entries of dark hours with the fan at rest and the vents shut, long enough that walls and floor have
 * forgotten the day's sun at their surface, each with a neighbour on both sides of the same night.
 *
 * @param record of the house
 * @param rule what counts
 */
export function quietHours(record: HouseRecord, rule: QuietRule = {}): QuietHours {
  const { settled = 3, dark = 2, leastDifference = 3, curtain = "any" } = rule;
  const need = Math.ceil(settled * HOUR / record.step);
  const count = record.inside.length;
  const [from, to] = [rule.from ?? 0, Math.min(count, rule.to ?? count)];
  const calm = (i: number) =>
    record.radiation[i]! < dark && !((record.fan?.[i] ?? 0) !== 0) &&
    !((record.vents?.[i] ?? 0) > 0.01);
  const asked = (i: number) =>
    curtain === "any" || record.curtain === undefined ||
    (curtain === "shut" ? record.curtain[i]! > 0.95 : record.curtain[i]! < 0.05);
  const whole = (i: number) =>
    [
      record.inside,
      record.outside,
      record.heater,
      record.wind,
      record.skyLoss,
      record.floorHeat,
      record.ground,
    ]
      .every((series) => series === undefined || Number.isFinite(series[i]!));
  const [places, nights] = [[] as number[], [] as number[]];
  let [lasted, night, last] = [0, -1, -2];
  for (let i = from; i < to; i++) {
    lasted = calm(i) && asked(i) ? lasted + 1 : 0;
    const good = (k: number) => k >= from && k < to && calm(k) && asked(k) && whole(k);
    if (lasted <= need || !good(i) || !good(i - 1) || !good(i + 1)) continue;
    if (record.inside[i]! - record.outside[i]! < leastDifference) continue;
    if (i !== last + 1) night++;
    last = i;
    places.push(i);
    nights.push(night);
  }
  return { places, nights };
}
