/** Defaults of the fan section that follow from tubes and headers. @module */
import { type NoteDefault, roundTo } from "../basics/mod.ts";
import type { HeadersInputs } from "../headers/mod.ts";
import type { TubesInputs } from "../tubes/mod.ts";
import type { FanCurve } from "./curve.ts";
import { chooseFan } from "./default_fan.ts";
import type { FanGiven, FanInputs } from "./fields.ts";

/** Fills the fan, its count and the riser left open from the air flow of the tubes. */
export function completeFan(
  given: FanGiven,
  before: {
    readonly tubes: TubesInputs;
    readonly headers: HeadersInputs;
    /** curves of the user's own file, null where there is none, and all to choose from */
    readonly fans: { readonly own: readonly FanCurve[] | null; readonly all: readonly FanCurve[] };
  },
  note: NoteDefault,
): FanInputs {
  const { tubes, headers, fans } = before;
  const { curves: _curves, ...rest } = given;
  const choose = (id?: string) =>
    chooseFan(tubes.airFlow, id, id === undefined ? fans.own ?? fans.all : fans.all);
  const fan = note("fan.fan", given.fan, () => choose().fan);
  const count = note("fan.count", given.count, () => choose(fan).count);
  return {
    ...rest,
    ...(fans.own === null ? {} : { ownFans: fans.own }),
    fan,
    count,
    riserDiameter: note(
      "fan.riserDiameter",
      given.riserDiameter,
      () => riserDiameter(headers, count),
    ),
  };
}

/** As the header, or with the cross-section of all the headers that one fan serves, m. */
function riserDiameter({ diameter, groups }: HeadersInputs, fans: number): number {
  return groups <= fans ? diameter : roundTo(diameter * Math.sqrt(groups / fans), 0.01);
}
