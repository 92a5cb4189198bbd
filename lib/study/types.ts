/** The study: all inputs, checked and in SI. @module */
import type { Notice } from "../basics/mod.ts";
import type { UnitSystem } from "../units/mod.ts";
import type { ClimateYear, Place } from "../climate/types.ts";
import type { StudyInputs } from "./chapters.ts";
import type { GivenFile } from "./file/given_file.ts";

export type { Figure, Figures } from "../basics/mod.ts";

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
  /** units that are shown first */
  readonly units: UnitSystem;
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

/** What a study holds besides the inputs of its chapters. */
export interface StudyFrame {
  /** path of the study file */
  readonly path: string;
  /** text of the study file */
  readonly text: string;
  /** heading of the report */
  readonly heading: StudyHeading;
  /** where the weather is from */
  readonly place: Place;
  /** measured years that follow one another, whose winters the odds are counted from; none where not given */
  readonly measuredYears: readonly ClimateYear[];
  /** values the user did not give */
  readonly defaults: readonly DefaultTaken[];
  /** SHA-256 of study file and climate, hex */
  readonly inputHash: string;
  /** SHA-256, hex, of what the study says besides its weather, and of fans, prices and logs of its own */
  readonly studyHash: string;
  /** the study file and every file it was read with, as they were given */
  readonly files: readonly GivenFile[];
  /** messages for the reader */
  readonly notices: readonly Notice[];
}

/** One study, immutable: the frame, the weather of the year, and the section of each chapter in SI. */
export type Study = StudyFrame & StudyInputs;
