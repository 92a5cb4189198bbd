/** Cautions beside each step, and notices of a result. @module */
import Papa from "papaparse";
import type { ChapterName, Notice, NoticeLevel } from "../../basics/mod.ts";
import type { DisplayItem } from "./figure.ts";
import { escapeMarkup } from "./escape.ts";
import text from "../../../data/cautions/cautions.csv" with { type: "text" };

/** One caution. */
export interface Caution {
  /** chapter it stands beside */
  readonly chapter: ChapterName;
  /** what can happen */
  readonly hazard: string;
  /** what to mind */
  readonly text: string;
  /** whose word counts */
  readonly deferTo: string;
  /** where the values come from */
  readonly source: string;
}

/** All cautions, in the order of the job. */
export const CAUTIONS: readonly Caution[] = Papa.parse<Record<string, string>>(text.trim(), {
  header: true,
}).data.map((row) => ({
  chapter: row["chapter"] as ChapterName,
  hazard: row["hazard"]!,
  text: row["text"]!,
  deferTo: row["defer_to"]!,
  source: row["source"]!,
}));

/** The cautions of one chapter. */
export function cautionsOf(chapter: ChapterName): Caution[] {
  return CAUTIONS.filter((caution) => caution.chapter === chapter);
}

/** The cautions of a chapter as a list, each with those whose word counts. */
export function caution(chapter: ChapterName): DisplayItem {
  const found = cautionsOf(chapter);
  const last = "Local codes and law govern; nothing here replaces a licensed professional.";
  const items = found.map((one) =>
    `<li><strong>${escapeMarkup(one.hazard)}.</strong> ${escapeMarkup(one.text)} ` +
    `<em>Defer to: ${escapeMarkup(one.deferTo)}.</em></li>`
  ).join("\n");
  const plain = found.map((one) => `- ${one.hazard}. ${one.text} Defer to: ${one.deferTo}.`);
  return {
    "text/html": `<div class="caution" style="border:2px solid #950b85;padding:8px 14px">` +
      `<strong>⚠ Cautions</strong>\n<ul>${items}</ul>${last}</div>`,
    "text/plain": ["Cautions", ...plain, last].join("\n"),
  };
}

const LEVEL_WORDS: Readonly<Record<NoticeLevel, string>> = {
  caution: "Caution",
  warning: "Warning",
  info: "Note",
};
const LEVEL_ORDER: readonly NoticeLevel[] = ["caution", "warning", "info"];

/** Notices of one or more results, cautions and warnings first, doubles left out. */
export function notices(list: readonly Notice[]): DisplayItem {
  const unique = new Map(list.map((one) => [`${one.level} ${one.chapter} ${one.text}`, one]));
  const sorted = [...unique.values()].sort((a, b) =>
    LEVEL_ORDER.indexOf(a.level) - LEVEL_ORDER.indexOf(b.level)
  );
  if (sorted.length === 0) {
    const none = "No notices: the checks found nothing implausible.";
    return { "text/html": `<p>${none}</p>`, "text/plain": none };
  }
  const items = sorted.map((one) =>
    `<li><strong>${LEVEL_WORDS[one.level]}, ${one.chapter}:</strong> ${escapeMarkup(one.text)}</li>`
  ).join("\n");
  return {
    "text/html": `<ul class="notice-list">${items}</ul>`,
    "text/plain": sorted.map((one) => `${LEVEL_WORDS[one.level]}, ${one.chapter}: ${one.text}`)
      .join("\n"),
  };
}
