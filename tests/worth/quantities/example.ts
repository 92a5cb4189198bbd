import type { TakeOffInputs } from "winterground/worth/mod.ts";
import { type ExampleChanges, exampleInputs } from "../../drawings/example.ts";

/** The made-up field of the drawing tests with what else is bought. */
export function exampleTakeOff(
  changes: ExampleChanges = {},
  more: Partial<TakeOffInputs> = {},
): TakeOffInputs {
  return {
    ...exampleInputs(changes),
    fan: { id: "test-fan", name: "invented fan" },
    coilLength: null,
    gravelMargin: null,
    flatBoard: null,
    collector: null,
    ...more,
  };
}
