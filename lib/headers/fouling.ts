/**
 * Fields in which some tubes hold water or silt.
 *
 * @module
 */
import { type Filling, fouledTube } from "../tubes/mod.ts";
import type { HeaderGroup } from "./build.ts";

/**
 * A group whose tubes are partly filled: their losses rise, shut ones are blocked.
 *
 * @param group tubes and headers
 * @param fillings depth and length by place of the tube in the group
 * @param airFlow m³/s of the group, for the friction in the narrow parts
 * @returns the group with its fillings
 */
export function fouledGroup(
  group: HeaderGroup,
  fillings: ReadonlyMap<number, Filling>,
  airFlow: number,
): HeaderGroup {
  const { product, length, air, places } = group;
  const each = airFlow / places.length;
  const fouled = places.map((_, tube) => {
    const filling = fillings.get(tube);
    return filling === undefined ? null : fouledTube({ product, length, air }, filling, each);
  });
  const shut = fouled.flatMap((tube, i) => tube?.blocked === true ? [i] : []);
  return {
    ...group,
    added: places.map((_, tube) => {
      const effect = fouled[tube] ?? null;
      const before = group.added?.[tube] ?? 0;
      return effect === null || effect.blocked ? before : before + effect.addedLoss;
    }),
    blocked: new Set([...(group.blocked ?? []), ...shut]),
  };
}
