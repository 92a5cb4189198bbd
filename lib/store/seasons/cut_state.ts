/** House and ground at the hours of the year at which a power cut is tried. @module */
import { min } from "d3-array";
import { HOURS_PER_YEAR, lowestRunStart } from "../../basics/mod.ts";
import type { CutStart, CutState } from "../cut_states.ts";
import type { StepListener } from "../step_report.ts";
import type { YearState } from "./year.ts";

/** h of the spell whose start is one of them. */
const SPELL = 72;

/** Hours of the year at which the power is cut: the coldest outdoors, and the start of the coldest spell. */
export function cutHours(
  dryBulb: Float64Array,
): readonly { readonly start: CutStart; readonly hour: number }[] {
  return [
    { start: "coldest hour", hour: dryBulb.indexOf(min(dryBulb)!) },
    { start: "coldest three days", hour: lowestRunStart(dryBulb, SPELL) },
  ];
}

/** A listener that keeps the states at the start of these hours, and the states kept. */
export function cutRecorder(
  dryBulb: Float64Array,
  state: YearState,
): { readonly listen: StepListener; readonly kept: () => readonly CutState[] } {
  const found = new Map<CutStart, CutState>();
  const before = cutHours(dryBulb).map(({ start, hour }) => ({
    start,
    hour,
    last: (hour + HOURS_PER_YEAR - 1) % HOURS_PER_YEAR,
  }));
  return {
    listen: (report) => {
      for (const { start, hour, last } of before) {
        if (report.hour !== last) continue;
        const { owed, vapourOwed } = state;
        found.set(start, {
          start,
          hour,
          soil: state.engine.save(),
          house: { ...state.house },
          owed,
          vapourOwed,
        });
      }
    },
    kept: () => before.map(({ start }) => found.get(start)!),
  };
}
