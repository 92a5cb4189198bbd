/** Waste and spares on top of what is laid. @module */
import { allowance } from "../../tubes/mod.ts";

/**
 * An amount with its waste.
 *
 * @param amount net, in any unit
 * @param waste name of the allowance
 */
export function withWaste(amount: number, waste: string): number {
  return amount * (1 + allowance(waste));
}

/** Whole pieces with the usual spares; a count. */
export function whole(amount: number): number {
  return Math.ceil(amount * (1 + allowance("spare fittings")));
}
