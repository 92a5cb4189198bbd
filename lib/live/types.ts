/** What the page, its worker and the publisher hand each other: plain data. @module */
import type { Notice } from "../basics/mod.ts";
import type { HOURLY_SERIES } from "../climate/mod.ts";
import type { ClimateYear, Place } from "../climate/types.ts";
import type { FanGiven } from "../fan/fields.ts";
import type { FanCurve } from "../fan/types.ts";
import type { HeadersGiven } from "../headers/fields.ts";
import type { HouseGiven } from "../house/fields.ts";
import type { SoilGiven } from "../soil/fields.ts";
import type { StoreInputs } from "../store/types.ts";
import type { Horizon } from "../sun/mod.ts";
import type { TubesGiven } from "../tubes/fields.ts";
import type { Kind } from "../units/kinds.ts";
import type { UnitSystem } from "../units/quantity.ts";

/** The sections of a study file that its settled year hangs on, as the file gives them, in SI. */
export interface GivenSections {
  readonly soil: SoilGiven;
  readonly house: HouseGiven;
  readonly tubes: TubesGiven;
  readonly headers: HeadersGiven;
  readonly fan: FanGiven;
  readonly store: StoreInputs;
}

/** A study as a page carries it, without the hourly series of its weather. */
export interface LiveStudy {
  readonly given: GivenSections;
  /** curves of the study's own file of fans; null where it names none */
  readonly ownFans: readonly FanCurve[] | null;
}

/** What a slider may change, by name. */
export const CHANGES = [
  "length",
  "count",
  "speed",
  "moisture",
  "conductivity",
  "leakage",
  "curtain",
  "setPoint",
] as const;

/** Name of a change. */
export type ChangeName = typeof CHANGES[number];

/** Values moved away from the study, in the units inside the library: m, tubes, ratio, 0 to 1, W/(m K), 1/h, m² K/W, degC. */
export type Changes = { readonly [Name in ChangeName]?: number };

/** The year that repeats, in numbers. */
export interface LiveFigures {
  /** m³/s of the fans together */
  readonly airFlow: number;
  /** kWh a year into the soil through the tubes */
  readonly heatIn: number;
  /** kWh a year out of it */
  readonly heatOut: number;
  /** kWh a year of fan electricity */
  readonly fanEnergy: number;
  /** degC, coldest hour with the store, without a heater */
  readonly coldestHour: number;
  /** degC with the fan always off */
  readonly coldestHourNoFan: number;
  /** h a year below 0 degC with the store, without a heater */
  readonly hoursBelowFreezing: number;
  /** h a year with the fan always off */
  readonly hoursBelowFreezingNoFan: number;
  /** kWh a year to hold the heating set point with the store */
  readonly backupHeat: number;
  /** kWh a year with the fan always off */
  readonly backupHeatNoFan: number;
  /** kWh a year that the store saves */
  readonly savedHeat: number;
}

/** Coldest air of each day of the year without a heater, degC, 365 each. */
export interface LiveDays {
  /** degC */
  readonly outdoors: readonly number[];
  /** degC with the store */
  readonly store: readonly number[];
  /** degC with the fan always off */
  readonly noFan: readonly number[];
}

/** Back-up heat by month, kWh, 12 each. */
export interface LiveMonths {
  /** kWh with the store */
  readonly store: readonly number[];
  /** kWh with the fan always off */
  readonly noFan: readonly number[];
}

/** What is known of a settled year so far. */
export interface LivePart {
  readonly figures: Partial<LiveFigures>;
  readonly days: Partial<LiveDays>;
  readonly months: Partial<LiveMonths>;
}

/** The halves of a year: the house runs free, or a heater without limit holds its set point. */
export const LIVE_HALVES = ["free", "held"] as const;

/** Name of a half. */
export type LiveHalf = typeof LIVE_HALVES[number];

/** As much of a settled year as some halves know. */
export interface LiveResult extends LivePart {
  /** number of slices along the tubes it was computed with */
  readonly slices: number;
  /** what the chapters say of the case */
  readonly notices: readonly Notice[];
}

/** A settled year. */
export interface LiveYear extends LiveResult {
  readonly figures: LiveFigures;
  readonly days: LiveDays;
  readonly months: LiveMonths;
}

/** A value of the study that the page lets its reader move. */
export interface Slider {
  readonly name: ChangeName;
  /** words beside it */
  readonly label: string;
  /** what it is, for its unit */
  readonly kind: Kind;
  /** value of the study, in the unit the kind has inside the library */
  readonly value: number;
  /** ends and step of the slider, in the same unit */
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/** How finely a year is computed: on few slices at every move, or as the study says. */
export type Resolution = "screening" | "full";

/** Name of a series. */
export type SeriesName = typeof HOURLY_SERIES[number];

/** A year of weather without its series. */
export type WeatherHead = Omit<ClimateYear, SeriesName | "normals" | "notices">;

/** What a study says of any weather that it is run on. */
export interface WeatherTerms {
  /** place of the study: used where a file does not say its own */
  readonly place: Place;
  /** skyline of the site; empty where it is open */
  readonly horizon: Horizon;
  /** true where radiation that certainly stands in the wrong hours is moved back */
  readonly mendShift: boolean;
  /** which year is made from normals */
  readonly seed: number;
}

/** All that a page carries besides its series of weather. */
export interface LivePage {
  /** one line that names the study */
  readonly title: string;
  /** start of a hash of study, weather and library, for links */
  readonly mark: string;
  /** units that are shown first */
  readonly units: UnitSystem;
  readonly study: LiveStudy;
  readonly weather: WeatherHead;
  /** series packed beside it, in their order */
  readonly series: readonly SeriesName[];
  /** how a reader's own weather file is read */
  readonly terms: WeatherTerms;
  readonly sliders: readonly Slider[];
  /** years of the study as it is */
  readonly published: Readonly<Record<Resolution, LiveYear>>;
}

/** From the page to its worker. */
export type ToWorker =
  | {
    readonly type: "partner";
    /** to the worker of the other half */
    readonly port: MessagePort;
    /** true for the worker that reduces the soil of both */
    readonly reduces: boolean;
  }
  | {
    readonly type: "study";
    readonly study: LiveStudy;
    readonly climate: ClimateYear;
    /** what of each year this worker computes */
    readonly halves: readonly LiveHalf[];
  }
  | {
    readonly type: "run";
    /** number of the run; answers to an earlier one are dropped */
    readonly id: number;
    readonly changes: Changes;
    readonly resolution: Resolution;
  }
  | { readonly type: "stop" };

/** From the worker to its page. */
export type ToPage =
  | { readonly type: "ready" }
  | {
    readonly type: "part";
    /** number of the run */
    readonly id: number;
    /** share of the work that is done, 0 to 1 */
    readonly share: number;
    readonly part: LivePart;
  }
  | {
    readonly type: "result";
    /** number of the run */
    readonly id: number;
    /** of the halves that the worker computes */
    readonly result: LiveResult;
  }
  | {
    readonly type: "fault";
    /** number of the run */
    readonly id: number;
    readonly message: string;
  };

/** From the page to the reader of weather files. */
export interface ToReader {
  /** number of the question */
  readonly id: number;
  /** a table of weather, and its columns file where it needs one */
  readonly files: readonly File[];
  readonly terms: WeatherTerms;
}

/** From the reader of weather files to its page. */
export type FromReader =
  | { readonly type: "weather"; readonly id: number; readonly climate: ClimateYear }
  | { readonly type: "fault"; readonly id: number; readonly message: string };
