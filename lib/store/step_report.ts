/** The steps of a year of the store, and what each reports. @module */
import { HOUR } from "../basics/mod.ts";
import type { HouseStep } from "../house/types.ts";
import type { FlowAir } from "./air/flow_air.ts";
import type { FanMode } from "./control.ts";

/**
 * s: step lengths an engine of a year is built for. The first is the longest while the fan runs, and
 * the one of a schedule; the shortest leads up to where the fan switches. Each divides the hour.
 */
export const YEAR_STEPS: readonly number[] = [HOUR / 2, HOUR / 6, HOUR / 36];

/**
 * s: of years that only settle the ground. The ground keeps of them what a year of heat has made of its
 * slowest states, and the year that counts runs in the steps above.
 */
export const SETTLING_STEPS: readonly number[] = [HOUR, HOUR / 3, HOUR / 12];

/** Everything about one finished step, for those who record. Buffers are reused. */
export interface StepReport {
  readonly hour: number;
  readonly step: number;
  readonly seconds: number;
  readonly mode: FanMode;
  /** the air went through the tubes from the far end */
  readonly reversed: boolean;
  readonly house: HouseStep;
  readonly humidity: number;
  /** degC of the air the tubes drew, before the fan warmed it; NaN where it rests */
  readonly intake: number;
  /** degC of the air they gave; NaN where the fan rests */
  readonly outlet: number;
  /** W into the tube walls, all tubes */
  readonly sensible: number;
  readonly latent: number;
  /** kg/s, into the air */
  readonly vapour: number;
  /** degC between the tubes */
  readonly store: number;
  /** W into the floor */
  readonly floor: number;
  /** W that a plate collector gave the charging air */
  readonly collected: number;
  /** W electric of the fan; 0 where it rests */
  readonly fanPower: number;
  /** air and tubes at the density of the step; null where the fan rests */
  readonly air: FlowAir | null;
  /** W/m of tube by slice and tube; zero where the fan rests */
  readonly heat: Float64Array;
  readonly latentHeat: Float64Array;
  /** W/(m K), see MarchOutput */
  readonly latentSlope: Float64Array;
}

/** Called after each step; returns nothing. */
export type StepListener = (report: StepReport) => void;
