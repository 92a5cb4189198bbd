/** What the measured chapter takes and gives. @module */
import type { Notice } from "../basics/mod.ts";
import type { Kind } from "../units/mod.ts";
import type { Agreement } from "./fit/agreement.ts";
import type { Banded } from "./flows/sums.ts";
import type { LoggedSeason } from "./logged_season.ts";

export type { LogTexts, MeasuredInputs } from "./fields.ts";
export type { LogText } from "./log_texts.ts";
export type { Banded, HeatSums } from "./flows/sums.ts";
export type { HourlyHeat, LoggedFlow } from "./flows/hourly_heat.ts";
export type { Lift, LoggedNight } from "./flows/nights.ts";
export type { TestedDifference } from "./flows/saving.ts";
export type { ChannelSummary, LoggedDay, LoggedSeason } from "./logged_season.ts";

/** How well the plan meets the log over one length of time. */
export interface PlanAgreement extends Agreement {
  /** share of the mean, range of NMBE in which it lies in 95 of 100 cases, from the sensors alone */
  readonly nmbeRange: readonly [low: number, high: number];
  /** share of the mean, the same range of CV(RMSE) */
  readonly cvRmseRange: readonly [low: number, high: number];
  /** number of hours or days compared */
  readonly count: number;
  /** true where both are within the limits for hours, or for months */
  readonly within: boolean;
}

/** One thing that was planned and measured. */
export interface PlannedAndMeasured {
  /** what */
  readonly name: string;
  /** kind of quantity, which gives the unit of all values here */
  readonly kind: Kind;
  /** SI value of the plan over the hours that were logged */
  readonly planned: number;
  /** SI value of the log, with its range */
  readonly measured: Banded;
  /** true where the plan lies outside the range */
  readonly apart: boolean;
}

/** The heat of the store over the logged time, kWh. */
export interface LoggedBalance {
  /** kWh put in less kWh given back */
  readonly left: Banded;
  /** kWh that the soil between floor and lowest tubes gained by its probes; null without probes */
  readonly gained: Banded | null;
  /** kWh that went to floor, edges and the ground below, or is wrong; null without probes */
  readonly rest: Banded | null;
}

/** The plan beside the log. */
export interface PlanBesideLog {
  /** heat moved by the air in either direction, hour by hour */
  readonly hourly: PlanAgreement;
  /** the same by day */
  readonly daily: PlanAgreement;
  /** what was planned and what was measured */
  readonly rows: readonly PlannedAndMeasured[];
  /** kWh that the plan puts in and gives back on each day of the log */
  readonly days: readonly {
    /** ISO day */
    readonly day: string;
    /** kWh put in, in the hours that were logged */
    readonly heatIn: number;
    /** kWh given back, in the hours that were logged */
    readonly heatOut: number;
  }[];
  /** K, mean size of the difference between outdoors logged and in the study's weather; null where it was not logged */
  readonly weatherApart: number | null;
}

/** Result of the measured chapter. */
export interface MeasuredResult {
  /** why nothing is measured; null where it is */
  readonly reason: string | null;
  /** what the log says by itself; null where nothing is measured */
  readonly season: LoggedSeason | null;
  /** the plan beside it; null where nothing is measured */
  readonly plan: PlanBesideLog | null;
  /** heat of the soil; null where nothing is measured */
  readonly balance: LoggedBalance | null;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}
