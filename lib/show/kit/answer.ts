/** The answer of a chapter in one card. @module */
import type { DisplayItem } from "./figure.ts";
import { escapeMarkup } from "./escape.ts";

/** How well the goal is met; always shown as a word too. */
export type Light = "yes" | "partly" | "no";

/** What an answer card says. */
export interface AnswerWords {
  /** the answer itself, a sentence with its numbers */
  readonly answer: string;
  /** from where to where it may lie, and why */
  readonly range?: string;
  /** further lines below the range: head and text */
  readonly more?: readonly (readonly [head: string, text: string])[];
  /** what drives it */
  readonly drivenBy: string;
  /** what would change it */
  readonly changesWith: string;
  /** where the question can be answered with yes or no */
  readonly light?: Light;
}

/** Sign and colour of each light. */
export const LIGHTS: Readonly<Record<Light, { readonly sign: string; readonly colour: string }>> = {
  yes: { sign: "●", colour: "#28a1a4" },
  partly: { sign: "◐", colour: "#db6718" },
  no: { sign: "○", colour: "#950b85" },
};

/** "The answer: …; range …; driven by …; would change if …" as a card. */
export function answerCard(words: AnswerWords): DisplayItem {
  const lines: (readonly [string, string])[] = [["The answer", words.answer]];
  if (words.range !== undefined) lines.push(["Range", words.range]);
  lines.push(...words.more ?? []);
  lines.push(["Driven by", words.drivenBy], ["Would change if", words.changesWith]);
  const light = words.light === undefined ? undefined : LIGHTS[words.light];
  const colour = light?.colour ?? "#427aef";
  const sign = light === undefined ? "" : `<span class="light" style="color:${colour};` +
    `font-size:140%">${light.sign}</span> <strong>${words.light}</strong><br>`;
  const body = lines.map(([head, text]) => `<strong>${head}:</strong> ${escapeMarkup(text)}`)
    .join("<br>\n");
  const plain = lines.map(([head, text]) => `${head}: ${text}`).join("\n");
  return {
    "text/html": `<div class="answer" style="border-left:6px solid ${colour};padding:8px 14px;` +
      `background:#f5f7fa">${sign}${body}</div>`,
    "text/plain": words.light === undefined ? plain : `[${words.light}] ${plain}`,
  };
}
