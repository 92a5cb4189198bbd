/** Finds values of SI that a reader of US units meets first, or alone. */
import { KINDS } from "winterground/units/mod.ts";
import type { DisplayItem } from "winterground/show/kit/figure.ts";

/** Units of SI for which US use has another; electric power is in watts everywhere. */
const UNITS = [
  ...new Set(
    Object.values(KINDS).flatMap(({ shown: { si, us } }) =>
      us === null || si[1] === "W" ? [] : [si[1]]
    ),
  ),
  "°C",
  "cm",
  "MJ",
].sort((a, b) => b.length - a.length)
  .map((unit) => unit.replaceAll(/[.*+?^${}()|[\]\\/]/g, "\\$&")).join("|");
const NUMBER = "[−-]?\\d[\\d\u202f.]*(?: to [−-]?\\d[\\d\u202f.]*)?";
const END = "(?![\\w²³/(])";
/** In brackets behind a value of the other system. */
const SECOND = new RegExp(`\\(${NUMBER} (?:${UNITS})(?: [^()]*)?\\)`, "g");
const FIRST = new RegExp(`${NUMBER} (?:${UNITS})${END}|, (?:${UNITS})(?= a | \\(|$)`, "g");

/** Texts of a page's cells, lines and pictures, one by one. */
function textsOf(html: string): string[] {
  const pictures = [...html.matchAll(/data:image\/svg\+xml;base64,([^"]+)/g)].flatMap(
    ([, code]) => {
      const bytes = Uint8Array.from(atob(code!), (letter) => letter.charCodeAt(0));
      const svg = new TextDecoder().decode(bytes);
      return [...svg.matchAll(/<text[^>]*>(.*?)<\/text>/gs)].map(([, words]) => words!);
    },
  );
  const alts = [...html.matchAll(/alt="([^"]*)"/g)].map(([, words]) => words!);
  const lines = html.replaceAll(/base64,[^"]*/g, "")
    .split(/<\/?(?:p|li|td|th|caption|figcaption|h\d|div|tr|text)\b[^>]*>/);
  return [...lines, ...alts, ...pictures]
    .map((words) => words.replaceAll(/<[^>]+>/g, "").replaceAll("\u00a0", " ").trim());
}

/**
 * Texts in which a value of SI stands first or alone.
 *
 * @param item what a reader of US units is shown
 * @param names of products, which keep the numbers of their makers, and amounts of electricity
 */
export function siAlone(item: DisplayItem | string, names: readonly string[]): string[] {
  const html = typeof item === "string" ? item : item["text/html"];
  return textsOf(html).flatMap((words) => {
    const bare = names.reduce((text, name) => text.replaceAll(name, ""), words);
    const found = bare.replaceAll(SECOND, "").match(FIRST) ?? [];
    return found.map((value) => `${value} in: ${words.slice(0, 200)}`);
  });
}
