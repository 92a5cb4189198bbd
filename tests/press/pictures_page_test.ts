import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { listNotebooks } from "winterground/commands/notebook_files.ts";
import { parseNotebook } from "winterground/press/mod.ts";
import { browserStep, inChromium } from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import * as fan from "winterground/fan";
import * as worth from "winterground/worth";
import { fanInputs, fanResult } from "../show/fan/sample.ts";
import { svgOf } from "../show/figure_rules.ts";
import { ladder } from "../show/worth/sample.ts";

/** Pictures of the committed notebooks, as they are drawn. */
async function pictures(): Promise<readonly string[]> {
  const found: string[] = [];
  for (const { path } of await listNotebooks()) {
    for (const cell of parseNotebook(await Deno.readTextFile(path), path).cells) {
      if (cell.cell_type !== "code") continue;
      const shown = cell.outputs.map((one) => "data" in one ? one.data["text/html"] ?? "" : "");
      for (const [, code] of shown.join("").matchAll(/data:image\/svg\+xml;base64,([^"]+)"/g)) {
        found.push(new TextDecoder().decode(Uint8Array.from(atob(code!), (c) => c.charCodeAt(0))));
      }
    }
  }
  return found;
}

/** Words of a picture that stick out of it. */
const CUT_OFF = `[...document.querySelectorAll("body > div > svg")].flatMap((picture) => {
  const frame = picture.getBoundingClientRect();
  return [...picture.querySelectorAll("text")].filter((words) => {
    const { left, right, top, bottom, width } = words.getBoundingClientRect();
    return width > 0 && (left < frame.left - 1 || right > frame.right + 1 ||
      top < frame.top - 1 || bottom > frame.bottom + 1);
  }).map(({ textContent }) => textContent);
})`;

/** Pictures in which words come near the edge. */
function tightPictures(): readonly string[] {
  const furthest = fanResult.curve.airFlow.at(-1)!;
  const curves = [0.3, 0.6, 0.8, 0.95, 1].map((share) =>
    fan.curveChart({ ...fanResult, airFlow: share * furthest }, fanInputs)
  );
  const rungs = ladder!.rungs.map((rung) => ({ ...rung, name: "one more layer of glazing" }));
  return [...curves, worth.ladderChart({ ...ladder!, rungs })].map(svgOf);
}

/** Looks in a browser that no word of the pictures is cut off. */
function nothingCutOff(drawn: readonly string[]): Promise<void> {
  return inTemporary(async (folder) => {
    const page = join(folder, "pictures.html");
    const body = drawn.map((picture) => `<div>${picture}</div>`).join("\n");
    await Deno.writeTextFile(page, `<!DOCTYPE html><meta charset="utf-8"><body>${body}</body>`);
    await inChromium(async (tab) => {
      await tab.look({ width: 1280 });
      await tab.open(pathToFileURL(page).href);
      assertEquals(await tab.value<string[]>(CUT_OFF), []);
    });
  });
}

Deno.test("pictures in a browser", async (test) => {
  // Property: what a reader sees of every chart and drawing
  await browserStep(test, "no word of the committed notebooks' pictures is cut off", async () => {
    const drawn = await pictures();
    assert(drawn.length > 80, `only ${drawn.length} pictures`);
    await nothingCutOff(drawn);
  });
  await browserStep(
    test,
    "no word near the edge of a picture is cut off",
    () => nothingCutOff(tightPictures()),
  );
});
