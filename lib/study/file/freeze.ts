/** Makes plain data unchangeable. @module */

/** Freezes objects and lists all the way down; typed arrays cannot be frozen and stay as they are. */
export function deepFreeze<T>(value: T): T {
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return value;
  if (Object.isFrozen(value)) return value;
  Object.freeze(value);
  for (const part of Object.values(value)) deepFreeze(part);
  return value;
}
