/** Frost in words: when it first freezes, for how long, and whether that is good enough. @module */
import type { FreezingRange } from "../../house/mod.ts";
import { shown } from "../kit/reader.ts";
import type { Light } from "../kit/answer.ts";
import { hourName } from "../kit/calendar.ts";

/** "first below freezing on 3 Oct 04:00", or that it never is. */
export function firstFreezeText(hour: number | null): string {
  return hour === null
    ? "it never falls below freezing"
    : `after midsummer it first falls below freezing on ${hourName(hour)}`;
}

/** "it would freeze for 1100 h to 1500 h": were the house 1 K warmer or colder than computed. */
export function freezingText({ warmer, colder }: FreezingRange): string {
  const sooner = `if it were ${
    shown(1, "temperatureDifference", 0)
  } warmer or colder all year than computed, it would `;
  return colder === 0
    ? `${sooner}not freeze in either case`
    : `${sooner}freeze for ${shown(warmer, "hours")} to ${shown(colder, "hours")}`;
}

/** Yes where the house never freezes, no where it freezes for more than a twentieth of the year. */
export function frostLight(hoursBelowFreezing: number): Light {
  if (hoursBelowFreezing === 0) return "yes";
  return hoursBelowFreezing < 8760 / 20 ? "partly" : "no";
}

/** Says so where the fan is not needed against frost. */
export function needText(hoursBelowFreezingWithout: number): string {
  return hoursBelowFreezingWithout > 0
    ? ""
    : " It would not freeze with the fan always off either: the store is not needed against frost.";
}
