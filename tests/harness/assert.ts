/**
 * The part of `@std/assert` the tests use, with the same names and argument order, on top of
 * `node:assert`. Where JSR is reachable, deno.json can map "@std/assert" to "jsr:@std/assert@1".
 *
 * @module
 */
import assertStrict from "node:assert/strict";

/** Fails unless `condition` is truthy. */
export function assert(condition: unknown, message?: string): asserts condition {
  assertStrict.ok(condition, message as string);
}

/** Fails unless both values are deeply and strictly equal. */
export function assertEquals<T>(actual: T, expected: T, message?: string): void {
  assertStrict.deepStrictEqual(actual, expected, message as string);
}

/** Fails if both values are deeply equal. */
export function assertNotEquals<T>(actual: T, expected: T, message?: string): void {
  assertStrict.notDeepStrictEqual(actual, expected, message as string);
}

/** Fails unless `actual` lies within `tolerance` (absolute, default 1e-7 relative) of `expected`. */
export function assertAlmostEquals(
  actual: number,
  expected: number,
  tolerance?: number,
  message?: string,
): void {
  const allowed = tolerance ?? Math.abs(expected) * 1e-7;
  if (!(Math.abs(actual - expected) <= allowed)) {
    throw new assertStrict.AssertionError({
      message: `${message ?? "Values differ"}: got ${actual}, expected ${expected} ± ${allowed}`,
      actual,
      expected,
      operator: "assertAlmostEquals",
    });
  }
}

/** Fails unless `actual >= expected`. */
export function assertGreaterOrEqual(actual: number, expected: number, message?: string): void {
  assert(actual >= expected, message ?? `Expected ${actual} >= ${expected}`);
}

/** Fails unless `actual > expected`. */
export function assertGreater(actual: number, expected: number, message?: string): void {
  assert(actual > expected, message ?? `Expected ${actual} > ${expected}`);
}

/** Fails unless `actual <= expected`. */
export function assertLessOrEqual(actual: number, expected: number, message?: string): void {
  assert(actual <= expected, message ?? `Expected ${actual} <= ${expected}`);
}

/** Fails unless `actual < expected`. */
export function assertLess(actual: number, expected: number, message?: string): void {
  assert(actual < expected, message ?? `Expected ${actual} < ${expected}`);
}

/** Fails unless `actual` contains the text `expected`. */
export function assertStringIncludes(actual: string, expected: string, message?: string): void {
  assert(actual.includes(expected), message ?? `Expected "${actual}" to contain "${expected}"`);
}

/** Fails unless `actual` matches `expected`. */
export function assertMatch(actual: string, expected: RegExp, message?: string): void {
  assertStrict.match(actual, expected, message as string);
}

// deno-lint-ignore no-explicit-any
type ErrorClass<E extends Error> = new (...args: any[]) => E;

function checkError<E extends Error>(
  error: unknown,
  errorClass?: ErrorClass<E>,
  messageIncludes?: string,
): E {
  assert(error instanceof (errorClass ?? Error), `Unexpected error: ${error}`);
  if (messageIncludes !== undefined) assertStringIncludes(error.message, messageIncludes);
  return error as E;
}

/** Fails unless `run` throws, optionally a given class and message part; returns the error. */
export function assertThrows<E extends Error = Error>(
  run: () => unknown,
  errorClass?: ErrorClass<E>,
  messageIncludes?: string,
): E {
  try {
    run();
  } catch (error) {
    return checkError(error, errorClass, messageIncludes);
  }
  throw new assertStrict.AssertionError({ message: "Expected the function to throw" });
}

/** Fails unless the promise of `run` rejects; returns the error. */
export async function assertRejects<E extends Error = Error>(
  run: () => Promise<unknown>,
  errorClass?: ErrorClass<E>,
  messageIncludes?: string,
): Promise<E> {
  try {
    await run();
  } catch (error) {
    return checkError(error, errorClass, messageIncludes);
  }
  throw new assertStrict.AssertionError({ message: "Expected the promise to reject" });
}
