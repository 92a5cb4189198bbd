/**
 * Errors meant for the person who runs a study: where, what was expected, what was found, what to
 * do.
 *
 * @module
 */
import { readable, shortened } from "./readable.ts";

/** Where in a file something went wrong; lines and columns count from 1. */
export interface FileLocation {
  /** path as the user gave it */
  readonly file: string;
  /** line in the file, from 1 */
  readonly line?: number | undefined;
  /** column in the line (text files) from 1, or the name of a table column */
  readonly column?: number | string | undefined;
}

/** `file:line:column` with the parts that are known. */
export function describeLocation(location: FileLocation): string {
  const line = location.line === undefined ? "" : `:${location.line}`;
  const column = location.column === undefined
    ? ""
    : typeof location.column === "number"
    ? `:${location.column}`
    : ` (column "${location.column}")`;
  return `${location.file}${line}${column}`;
}

/** Bad input or wrong use: the command ends with exit status 2. */
export class InputError extends Error {
  /** shown in front of the message */
  override name = "InputError";
  /** Where the fault stands, where that is known. */
  readonly location: FileLocation | undefined;
  /** Builds the message, in which what a file holds is cut to a readable length. */
  constructor(message: string, location?: FileLocation) {
    const words = shortened(readable(message)); // in this order: codes are longer than their signs
    super(
      location === undefined
        ? words
        : `${shortened(readable(describeLocation(location)))}: ${words}`,
    );
    this.location = location;
  }
}

/** Faults that a message tells one by one. */
const TOLD = 60;

/** Several input faults found in one pass; shown one a line, the first sixty of them. */
export class InputErrors extends InputError {
  /** shown in front of the message */
  override name = "InputErrors";
  /** every fault found, in file order */
  readonly faults: readonly InputError[];
  /** Builds the message. */
  constructor(faults: readonly InputError[]) {
    super("");
    const told = faults.slice(0, TOLD).map((fault) => fault.message);
    const more = faults.length - told.length;
    this.message = (more > 0 ? [...told, `and ${more} more faults`] : told).join("\n");
    this.faults = faults;
  }
}

/** Faults of one file together, the first line first. */
export function inFileOrder(faults: readonly InputError[]): InputErrors {
  const line = ({ location }: InputError) => location?.line ?? 0;
  return new InputErrors(faults.toSorted((one, other) => line(one) - line(other)));
}

/** A quantity lies outside the range in which a model means anything. */
export class OutOfRangeError extends RangeError {
  /** shown in front of the message */
  override name = "OutOfRangeError";
  /** name of the quantity */
  readonly quantity: string;
  /** the value that was refused */
  readonly value: number;
  /** Builds the message. */
  constructor(quantity: string, value: number, low: number, high: number, unit: string) {
    super(`Cannot use ${quantity} as it must lie in ${low} to ${high} ${unit}: value is ${value}`);
    this.quantity = quantity;
    this.value = value;
  }
}

/** An iteration gave up: the study cannot be computed (exit status 1). */
export class NotConvergedError extends Error {
  /** shown in front of the message */
  override name = "NotConvergedError";
  /** iterations done */
  readonly iterations: number;
  /** last residual, in the unit of the sought quantity */
  readonly residual: number;
  /** Builds the message. */
  constructor(what: string, iterations: number, residual: number) {
    super(`Cannot find ${what}: after ${iterations} iterations the residual is still ${residual}`);
    this.iterations = iterations;
    this.residual = residual;
  }
}

/** By name: a fault that comes from a worker has lost its class. */
const USER_FAULTS = new Set(["InputError", "InputErrors", "OutOfRangeError", "NotConvergedError"]);

/** Whether the message of a fault is made for the person who runs the study. */
export function isUserFault(error: unknown): error is Error {
  return error instanceof Error && USER_FAULTS.has(error.name);
}

/** Throws {@link OutOfRangeError} unless `low <= value <= high`; NaN is refused too. */
export function requireInRange(
  quantity: string,
  value: number,
  low: number,
  high: number,
  unit: string,
): void {
  if (!(value >= low && value <= high)) throw new OutOfRangeError(quantity, value, low, high, unit);
}
