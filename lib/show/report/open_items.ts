/** Cautions, what licensed people have to sign, and what was assumed. @module */
import type { Notice } from "../../basics/mod.ts";
import type { Study } from "../../study/mod.ts";
import { FIELDS, valueAt } from "../../study/file/fields.ts";
import { formatQuantity } from "../../units/mod.ts";
import { CAUTIONS, notices } from "../kit/caution.ts";
import { escapeMarkup } from "../kit/escape.ts";
import type { DisplayItem } from "../kit/figure.ts";
import { forReport } from "../kit/layout.ts";
import { readersUnits, shown } from "../kit/reader.ts";
import { table } from "../kit/table.ts";
import { wide } from "./wide.ts";

/** What this study gives cause to mind: its cautions and warnings. */
export function runNotices(list: readonly Notice[]): DisplayItem {
  return notices(list.filter(({ level }) => level !== "info"));
}

/** Every hazard of the work, with what to mind. */
export function hazards(): DisplayItem {
  return wide(forReport(() =>
    table(CAUTIONS, [
      { head: "hazard", value: ({ hazard }) => hazard },
      { head: "what to mind", value: ({ text }) => text },
    ], "Hazards of the work; local codes and law govern")
  ));
}

/** One licensed person or office with what is left to them. */
export interface OpenItem {
  /** who decides */
  readonly who: string;
  /** what they decide on */
  readonly what: readonly string[];
}

/** What is left to each licensed person, those asked most first. */
export function openItemList(): readonly OpenItem[] {
  const items = new Map<string, string[]>();
  for (const { deferTo, hazard } of CAUTIONS) {
    for (const who of deferTo.split(";").map((one) => one.trim())) {
      items.set(who, [...items.get(who) ?? [], hazard]);
    }
  }
  return [...items].map(([who, what]) => ({ who, what }))
    .sort((a, b) => b.what.length - a.what.length || (a.who < b.who ? -1 : 1));
}

/** Open items for licensed people, with room for a name and a date. */
export function openItems(): DisplayItem {
  const title = "Open items: nobody but these people can close them";
  const items = openItemList();
  const rows = items.map(({ who, what }) =>
    `<tr><td>${escapeMarkup(who)}</td><td>${escapeMarkup(what.join("; "))}</td><td>☐</td></tr>`
  );
  return {
    "text/html": `<div class="wide"><table class="data"><caption>${title}</caption><thead><tr>` +
      `<th scope="col">who</th><th scope="col">what</th><th scope="col">closed</th></tr></thead>\n` +
      `<tbody>${rows.join("\n")}</tbody></table></div>`,
    "text/plain": [title, ...items.map(({ who, what }) => `[ ] ${who}: ${what.join("; ")}`)]
      .join("\n"),
  };
}

/** What the study file left open: the value taken and where it comes from. */
export function assumptions(study: Study): DisplayItem {
  return wide(
    forReport(() =>
      table(study.defaults, [
        { head: "input", value: ({ key }) => key },
        { head: "taken", value: ({ key, value }) => takenText(study, key, value) },
        { head: "source", value: ({ source }) => source },
      ], "Inputs that the study file left open, with the source of each value")
    ),
    "wide keys",
  );
}

/** m, below which a length is told in inches. */
const FOOT = 0.3048;

function takenText(study: Study, key: string, text: string): string {
  const kind = FIELDS.get(key)?.kind;
  const value = valueAt(study, key);
  if (readersUnits() === "SI" || kind === undefined || kind === "text") return text;
  if (typeof value !== "number") return text;
  const inches = (kind === "length" || kind === "depth") && value > 0 && value < FOOT;
  return inches ? shown(value, "smallLength") : formatQuantity(value, kind, "US");
}
