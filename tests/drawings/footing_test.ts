import { assert, assertEquals, assertStringIncludes } from "@std/assert";
import type { Notice } from "winterground/basics/mod.ts";
import { drawingInputs, drawSheets } from "winterground/drawings/mod.ts";
import { startRun } from "winterground/study/mod.ts";
import { openSmallStudy } from "../harness/small_study.ts";

interface Told {
  readonly notices: readonly Notice[];
  readonly sheets: readonly string[];
  readonly lines: number;
}

/** What notice and sheets say of the footing in a study with this line, or without one. */
async function told(line: string): Promise<Told> {
  const study = await openSmallStudy((text) =>
    text.replace("curtain: {coverage: 80 %}", line === "" ? "leafArea: 2" : line)
  );
  const run = startRun(study, { cacheFolder: null });
  const inputs = drawingInputs(study, { soil: await run.soil(), tubes: await run.tubes() });
  const files = drawSheets(inputs, "A4");
  const notices = [...(await run.tubes()).notices, ...(await run.headers()).notices]
    .filter(({ text }) => /footing/i.test(text));
  const captions = (name: string): string => {
    const lines = [...files[`${name}-A4.svg`]!.matchAll(/<text[^>]*>([^<]*)</g)].map(([, words]) =>
      words!.replaceAll("&#160;", "\u00a0")
    );
    const said = notices.map(({ text }) => text).join();
    const remarks = lines.map((first, start) => {
      let words = first;
      for (const more of lines.slice(start + 1)) {
        if (!said.includes(`${words} ${more}`)) break;
        words += ` ${more}`;
      }
      return words;
    });
    return remarks.find((words) => /footing/i.test(words) && words.includes("45"))!;
  };
  const drawn = (name: string): number =>
    files[`${name}-A4.svg`]!.match(/stroke="#b00020"/g)?.length ?? 0;
  return {
    notices,
    sheets: [captions("plan"), captions("section")],
    lines: drawn("plan") + drawn("section") + drawn("long-section"),
  };
}

Deno.test("notice and sheets say the same of a footing of unknown depth", async () => {
  // Property: the default is not a depth; find out before digging
  for (const line of ["", "footingDepth: unknown"]) {
    const { notices, sheets, lines } = await told(line);
    assertEquals(notices.length, 1, line);
    assertEquals(notices[0]!.level, "caution");
    for (
      const words of ["unknown", "before digging", "45", "geotechnical or structural engineer"]
    ) {
      assertStringIncludes(notices[0]!.text, words);
    }
    for (const sheet of sheets) {
      assertStringIncludes(sheet, "unknown");
      assertStringIncludes(notices[0]!.text, sheet);
    }
    assertEquals(lines, 0, "no line is drawn from a depth that nobody knows");
  }
});

Deno.test("notice and sheets say the same of no footing, a shallow and a deep one", async () => {
  // Property: a sheet that warns has its notice with the same length, and the other way round
  const seen = new Map<string, boolean>();
  for (const depth of ["0 m", "0.4 m", "1 m", "2.5 m"]) {
    const { notices, sheets, lines } = await told(`footingDepth: ${depth}`);
    const cut = /by (\d+\.\d\d)\u00a0m/.exec(sheets[0]!);
    assertEquals(sheets[0], sheets[1], depth);
    assertEquals(notices.length, cut === null ? 0 : 1, depth);
    seen.set(depth, cut !== null);
    if (cut !== null) {
      assertStringIncludes(notices[0]!.text, sheets[0]!);
      assertEquals(notices[0]!.level, "caution");
      assert(lines > 0);
    }
    assertEquals(sheets[0]!.includes("No footing"), depth === "0 m");
  }
  assertEquals(seen.get("0 m"), true);
  assertEquals(seen.get("2.5 m"), false);
});
