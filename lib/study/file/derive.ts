/** Fills what the study file may leave open, chapter by chapter. @module */
import type { NoteDefault, Section } from "../../basics/mod.ts";
import { FANS } from "../../fan/mod.ts";
import { formatMonthly } from "../../units/mod.ts";
import type { LogTexts } from "../../measured/types.ts";
import type { PriceList } from "../../worth/mod.ts";
import { CHAPTERS, type StudyInputs } from "../chapters.ts";
import type { DefaultTaken } from "../types.ts";
import { fieldKind, fieldRow } from "./fields.ts";
import type { LoadedFans } from "./own_fans.ts";
import type { StudyGiven } from "./schema.ts";

/** Inputs of the chapters with nothing left open; the climate is read from its file later. */
export type ChapterInputs = Omit<StudyInputs, "climate">;

// deno-lint-ignore no-explicit-any
type AnySection = Section<any, any, any>;

/**
 * Fills the open inputs, each chapter's from its own section and from those before it, and notes
 * each value taken.
 *
 * @param given the file after the schema
 * @param fans fans to choose from; those of the library unless given
 * @param prices of the study; none unless given
 * @param logs of the study; none unless given
 */
export function deriveDefaults(
  given: StudyGiven,
  fans: Pick<LoadedFans, "own" | "all"> = { own: null, all: FANS },
  prices: PriceList | null = null,
  logs: LogTexts | null = null,
): { readonly inputs: ChapterInputs; readonly taken: readonly DefaultTaken[] } {
  const taken: DefaultTaken[] = [];
  const note: NoteDefault = (key, value, otherwise, shownKey = key) => {
    if (value !== undefined) return value;
    const chosen = otherwise();
    const shown = typeof chosen === "string" ? chosen : formatMonthly(chosen, fieldKind(key));
    taken.push({ key: shownKey, value: shown, source: fieldRow(key).source });
    return chosen;
  };
  const inputs: Record<string, unknown> = {};
  for (const { name, section } of CHAPTERS) {
    const { complete }: AnySection = section;
    if (name === "climate") continue;
    inputs[name] = complete?.(given[name], { ...inputs, fans, prices, logs }, note) ?? given[name];
  }
  return { inputs: inputs as unknown as ChapterInputs, taken };
}
