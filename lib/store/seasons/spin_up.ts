/** Years until the store repeats itself. @module */
import { YEAR } from "../../basics/mod.ts";
import type { SoilLedger } from "../ledger/ledger.ts";
import type { ReducedEngine } from "../solver/reduced/engine.ts";
import type { TagLedger, Tags } from "../ledger/tags.ts";
import { carryOn, runYear, type YearSetting, type YearState } from "./year.ts";
import type { StepListener } from "../step_report.ts";

/** A year that repeats. */
export interface PeriodicYear {
  readonly ledger: SoilLedger;
  readonly tags: TagLedger | null;
  /** whether the fan ran in any of the years, those before the one that counts included */
  readonly fanRan: boolean;
}

/** Where years that only settle the ground run. */
export interface Settling {
  readonly state: YearState;
  readonly engine: ReducedEngine;
}

/** How a periodic year is sought. */
export interface SpinUp {
  readonly setting: YearSetting;
  readonly state: YearState;
  readonly engine: ReducedEngine;
  /** years each followed by a jump to what would repeat */
  readonly jumps: number;
  /**
   * state and engine in which those years run, where their steps are other than those of the year that
   * counts
   */
  readonly settling?: Settling | undefined;
  /** tagged fields, carried through the jumping years and the last */
  readonly tags?: Tags | undefined;
  /** listens to the year that counts */
  readonly listen?: StepListener | undefined;
}

/**
 * Runs years each followed by the modal jump, then the year that counts. The slowest state of the soil
 * has a time constant of years, so years as they come would need a decade; after two jumps the year
 * repeats to better than a thousandth.
 */
export function periodicYear(spinUp: SpinUp): PeriodicYear {
  const { setting, state, tags } = spinUp;
  const settling = spinUp.settling ?? spinUp;
  let fanRan = false;
  const run = (moved: YearState, listen?: StepListener) => {
    const ledger = runYear(setting, moved, listen);
    fanRan ||= ledger.fanEnergy > 0 || ledger.heatIn !== 0 || ledger.heatOut !== 0;
    return ledger;
  };
  for (let year = 0; year < spinUp.jumps; year++) {
    const before = settling.engine.save();
    const tagged = tags?.engine.save();
    tags?.open();
    run(settling.state, tags?.listen);
    tags?.close();
    settling.engine.jump(before, YEAR);
    if (tagged !== undefined) tags!.engine.jump(tagged, YEAR);
  }
  if (spinUp.settling !== undefined) carryOn(settling.state, state);
  tags?.open();
  const ledger = run(state, (report) => {
    tags?.listen(report);
    spinUp.listen?.(report);
  });
  return { ledger, tags: tags?.close() ?? null, fanRan };
}

/**
 * Plain years until a yearly figure stays within a share of its periodic value, by carrying on the
 * last ratio of the distances; never less than the years in which it already did.
 */
export function yearsUntilPeriodic(
  yearly: readonly number[],
  periodic: number,
  within = 0.02,
): number {
  const distance = yearly.map((value) => Math.abs(value - periodic));
  const allowed = Math.abs(periodic) * within;
  for (let year = 0; year < distance.length; year++) {
    if (distance.slice(year).every((value) => value <= allowed)) return year + 1;
  }
  const last = distance.at(-1)!;
  const ratio = Math.min(0.97, Math.max(0.2, last / (distance.at(-2) ?? 2 * last)));
  return yearly.length + Math.ceil(Math.log(allowed / last) / Math.log(ratio));
}
