/** The `measured` section of the study file. @module */
import { type Fields, list, open, quantity, text, written, yesNo } from "../basics/fields.ts";
import { readSeason } from "../units/mod.ts";
import type { LogText } from "./log_texts.ts";

/** `measured` section of the study file. */
export interface MeasuredInputs {
  /** name of the log map; null where the study names none */
  readonly logMap: string | null;
  /** the log map and the logs as they were read; null where the study names none */
  readonly texts: LogTexts | null;
  /** name of the file with the truth of made-up logs; null where there is none */
  readonly truth: string | null;
  /** name of the file with the faults planted in made-up logs; null where there is none */
  readonly plantedFaults: string | null;
  /** name of the file with a forecast; null where there is none */
  readonly forecast: string | null;
  /** s, step at which the heat is worked out; divides the hour */
  readonly step: number;
  /** days kept from every fit: `1 Mar to 14 Mar`, or `never` */
  readonly holdOut: string;
  /** days on which the fan is kept off for a test: `3 Feb to 16 Feb`, or `never` */
  readonly fanOff: string;
  /** true where the fan stands between the probes of intake and outlet */
  readonly fanBetweenProbes: boolean;
}

/** Texts of a study's logs. */
export interface LogTexts {
  /** the log map */
  readonly map: LogText;
  /** the logs, in the order of the study file */
  readonly logs: readonly LogText[];
  /** what is true, for grading; only of made-up logs */
  readonly truth?: LogText | undefined;
  /** faults that were planted, for grading; only of made-up logs */
  readonly plantedFaults?: LogText | undefined;
  /** forecast for the day ahead */
  readonly forecast?: LogText | undefined;
}

/** Map and logs alone: what is read of them hangs on nothing else. */
export function logsAlone({ map, logs }: LogTexts): LogTexts {
  return { map, logs };
}

/** The section as given: files are named, not read. */
export type MeasuredGiven =
  & Omit<MeasuredInputs, "texts" | "logMap" | "truth" | "plantedFaults" | "forecast">
  & {
    readonly forecast: string | undefined;
    readonly logMap: string | undefined;
    readonly truth: string | undefined;
    readonly plantedFaults: string | undefined;
    readonly logs: readonly { readonly file: string }[];
  };

const logFields: Fields<{ readonly file: string }> = { file: text };

/** Keys of the section. */
export const measuredFields: Fields<MeasuredGiven> = {
  logMap: open(text),
  logs: list(logFields),
  truth: open(text),
  plantedFaults: open(text),
  forecast: open(text),
  step: quantity,
  holdOut: written(readSeason, "1 Mar to 14 Mar"),
  fanOff: written(readSeason, "3 Feb to 16 Feb"),
  fanBetweenProbes: yesNo,
};
