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
  readonly name: string;
  readonly title: string;
  readonly author: string;
  readonly question: string;
}

/** A value the user did not give. */
export interface DefaultTaken {
  /** path in the study file, such as "soil.quartz" */
  readonly key: string;
  /** value as text with unit */
  readonly value: string;
  readonly source: string;
}

/** One study, immutable. */
export interface Study {
  /** path of the study file */
  readonly path: string;
  readonly heading: StudyHeading;
  readonly place: Place;
  readonly climate: ClimateYear;
  readonly soil: SoilInputs;
  readonly house: HouseInputs;
  readonly tubes: TubesInputs;
  readonly headers: HeadersInputs;
  readonly fan: FanInputs;
  readonly store: StoreInputs;
  readonly defaults: readonly DefaultTaken[];
  /** SHA-256 of study file and climate, hex */
  readonly inputHash: string;
  readonly notices: readonly Notice[];
}

/** One figure of results.json. */
export interface Figure {
  /** SI, degC, kWh; text for dates; null where the event does not occur */
  readonly value: number | string | null;
  readonly unit: string;
  readonly label: string;
}

/** All figures by key `chapter.name`. */
export type Figures = Readonly<Record<string, Figure>>;
