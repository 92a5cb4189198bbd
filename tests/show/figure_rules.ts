/** What every picture must have, checked for the figures of a chapter. */
import { assert, assertMatch } from "@std/assert";
import type { DisplayItem } from "../../lib/show/kit/figure.ts";

/** Draws a figure; and the words that must stand in it, its units above all. */
export type DrawnFigure = readonly [draw: () => DisplayItem, words: readonly string[]];

/** SVG source out of a display item. */
export function svgOf(item: DisplayItem): string {
  const found = /src="data:image\/svg\+xml;base64,([^"]+)"/.exec(item["text/html"]);
  assert(found !== null, "no embedded picture");
  return new TextDecoder().decode(Uint8Array.from(atob(found[1]!), (c) => c.charCodeAt(0)));
}

/** One test a figure. */
export function checkFigures(figures: Readonly<Record<string, DrawnFigure>>): void {
  for (const [name, [draw, words]] of Object.entries(figures)) {
    Deno.test(`${name} has axis units, alt text, a namespace, white ground and no broken number`, () => {
      // Property: what every picture must have
      const item = draw();
      const svg = svgOf(item);
      assertMatch(svg, /^<svg xmlns="http:\/\/www.w3.org\/2000\/svg"/);
      assert(svg.includes('fill="white"'));
      assert(!/NaN|undefined|Infinity/.test(svg), "broken number in the picture");
      for (const word of words) assert(svg.includes(word), `no "${word}" in the picture`);
      const alt = /<img alt="([^"]+)"/.exec(item["text/html"]);
      assert(alt !== null && alt[1]!.length > 30, "alt text missing or too short");
      assert(!/NaN|undefined|Infinity/.test(item["text/html"]), "broken number in the words");
      assert(item["text/plain"].length > 30);
      assert(item["text/html"].length < 500_000, "picture too large");
    });
  }
}
