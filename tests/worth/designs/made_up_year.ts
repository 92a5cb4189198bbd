/** A year that costs nothing and that the quick estimate ranks wrongly. */
import { ownChoice } from "../../../lib/worth/designs/choices.ts";
import type { BuiltDesign } from "../../../lib/worth/designs/judge.ts";
import type { DesignQuestion } from "../../../lib/worth/designs/types.ts";

/**
 * Heat saved is the estimate's times what depth, spacing, board and control make of it, with a best
 * limit of discharging inside its range; hours fall with it.
 */
export function madeUpYear(
  question: DesignQuestion,
): (design: BuiltDesign) => { readonly saved: number; readonly hours: number } {
  const own = ownChoice(question);
  return ({ choice, estimate }) => {
    const saved = estimate.saved *
      (choice.depth / own.depth) ** 0.25 *
      (choice.spacing / own.spacing) ** 0.35 *
      (choice.airFlow / own.airFlow) ** -0.2 *
      (choice.edgeBoard ? 1.06 : 1) *
      (1 - 0.06 * Math.abs(Math.log(choice.chargeStart / 4))) *
      (1 - 0.01 * (choice.dischargeBelow - own.dischargeBelow - 1) ** 2);
    return { saved, hours: Math.round(80 * Math.exp(-saved / 2500)) };
  };
}
