/** Frozen ground day by day. @module */
import type { GroundField } from "./types.ts";

/** Frozen ground of one day. */
export interface FrostDay {
  /** day of the year, from 0 */
  readonly day: number;
  /** m, upper end of the frozen ground */
  readonly top: number;
  /** m, its lower end; the same as `top` where nothing is frozen */
  readonly bottom: number;
  /** true where any of the ground is frozen */
  readonly frozen: boolean;
}

/**
 * Frozen ground of every day, from the map of depth and day, straight between its depths.
 *
 * @param field degC by depth and day
 */
export function frostDays({ depths, temperature }: GroundField): FrostDay[] {
  return Array.from({ length: temperature[0]!.length }, (_, day) => {
    const value = (index: number) => temperature[index]![day]!;
    const frozen = depths.map((_, index) => index).filter((index) => value(index) < 0);
    if (frozen.length === 0) return { day, top: 0, bottom: 0, frozen: false };
    const crossing = (inner: number, outer: number) =>
      depths[outer] === undefined ? depths[inner]! : depths[inner]! +
        (depths[outer]! - depths[inner]!) * value(inner) / (value(inner) - value(outer));
    return {
      day,
      top: crossing(frozen[0]!, frozen[0]! - 1),
      bottom: crossing(frozen.at(-1)!, frozen.at(-1)! + 1),
      frozen: true,
    };
  });
}
