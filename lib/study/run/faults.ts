/** Errors on their way from one thread to another: kind, text, place and stack stay. @module */
import { InputError, InputErrors, NotConvergedError, OutOfRangeError } from "../../basics/mod.ts";

/** An error as plain data. */
export interface Fault {
  /** name of its class */
  readonly name: string;
  /** what it says */
  readonly message: string;
  /** where it was thrown: file, line and column */
  readonly stack: string | undefined;
  /** what it holds besides, such as the place in an input file */
  readonly fields: Readonly<Record<string, unknown>>;
}

const KINDS: Readonly<Record<string, { readonly prototype: Error }>> = {
  InputError,
  InputErrors,
  NotConvergedError,
  OutOfRangeError,
  RangeError,
  TypeError,
};

/** What is sent of anything thrown. */
export function faultOf(thrown: unknown): Fault {
  const error = thrown instanceof Error ? thrown : new Error(String(thrown));
  const { name, message, stack } = error;
  const fields = Object.fromEntries(
    Object.entries(error).filter(([, value]) => isPlain(value)),
  );
  return { name, message, stack, fields };
}

/** The error again, of the same kind. */
export function errorOf({ name, message, stack, fields }: Fault): Error {
  const error = new Error(message);
  Object.setPrototypeOf(error, (KINDS[name] ?? Error).prototype);
  Object.assign(error, fields);
  Object.defineProperty(error, "name", { value: name, configurable: true });
  Object.defineProperty(error, "stack", { value: stack, configurable: true, writable: true });
  return error;
}

function isPlain(value: unknown): boolean {
  try {
    structuredClone(value);
    return true;
  } catch {
    return false;
  }
}
