/** Whether two pieces of plain data hold the same. @module */

/**
 * Compares plain data by content: objects, lists, typed arrays and what they hold.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { samePlain } from "./same.ts";
 *
 * assertEquals(samePlain({ a: Float64Array.of(1, 2) }, { a: Float64Array.of(1, 2) }), true);
 * assertEquals(samePlain({ a: [1] }, { a: [1], b: 2 }), false);
 * ```
 */
export function samePlain(one: unknown, other: unknown): boolean {
  if (Object.is(one, other)) return true;
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null) {
    return false;
  }
  if (ArrayBuffer.isView(one) || Array.isArray(one)) {
    return one.constructor === other.constructor &&
      sameList(one as ArrayLike<unknown>, other as ArrayLike<unknown>);
  }
  if (ArrayBuffer.isView(other) || Array.isArray(other)) return false;
  const keys = Object.keys(one);
  return keys.length === Object.keys(other).length &&
    keys.every((key) =>
      key in other &&
      samePlain((one as Record<string, unknown>)[key], (other as Record<string, unknown>)[key])
    );
}

function sameList(one: ArrayLike<unknown>, other: ArrayLike<unknown>): boolean {
  if (one.length !== other.length) return false;
  for (let k = 0; k < one.length; k++) if (!samePlain(one[k], other[k])) return false;
  return true;
}
