/** The study: all inputs, checked and in SI. @module */
import type { Notice } from "../basics/mod.ts";
import type { ClimateYear, Place } from "../climate/types.ts";
import type { FanInputs } from "../fan/types.ts";
import type { HeadersInputs } from "../headers/types.ts";
import type { HouseInputs } from "../house/types.ts";
import type { SoilInputs } from "../soil/types.ts";
import type { StoreInputs } from "../store/types.ts";
import type { TubesInputs } from "../tubes/types.ts";

/** Heading of the study. */
export interface StudyHeading {
  /** short name */
  readonly name: string;
  /** one line */
  readonly title: string;
  /** who answers for the inputs */
  readonly author: string;
  /** what is asked */
  readonly question: string;
}

/** A value the user did not give. */
export interface DefaultTaken {
  /** path in the study file, such as "soil.quartz" */
  readonly key: string;
  /** value as text with unit */
  readonly value: string;
  /** where the values come from */
  readonly source: string;
}

/** One study, immutable. */
export interface Study {
  /** path of the study file */
  readonly path: string;
  /** heading of the report */
  readonly heading: StudyHeading;
  /** where the weather is from */
  readonly place: Place;
  /** weather of the year */
  readonly climate: ClimateYear;
  /** soil section in SI */
  readonly soil: SoilInputs;
  /** house section in SI */
  readonly house: HouseInputs;
  /** tubes section in SI */
  readonly tubes: TubesInputs;
  /** headers section in SI */
  readonly headers: HeadersInputs;
  /** fan section in SI */
  readonly fan: FanInputs;
  /** store section in SI */
  readonly store: StoreInputs;
  /** values the user did not give */
  readonly defaults: readonly DefaultTaken[];
  /** SHA-256 of study file and climate, hex */
  readonly inputHash: string;
  /** messages for the reader */
  readonly notices: readonly Notice[];
}

/** One figure of results.json. */
export interface Figure {
  /** SI, degC, kWh; text for dates; null where the event does not occur */
  readonly value: number | string | null;
  /** unit of the value */
  readonly unit: string;
  /** name shown */
  readonly label: string;
}

/** All figures by key `chapter.name`. */
export type Figures = Readonly<Record<string, Figure>>;
