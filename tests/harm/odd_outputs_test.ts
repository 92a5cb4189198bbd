// Property: no file that a run leaves holds NaN, Infinity or undefined, however odd the study.
import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { parseHTML } from "linkedom";
import type { ChapterResults } from "winterground/study/chapters.ts";
import { openStudyText, startRun } from "winterground/study/mod.ts";
import { studyFigures } from "winterground/study/figures.ts";
import { writeResults } from "winterground/study/results/write_results.ts";
import { drawingInputs, drawSheets } from "winterground/drawings/mod.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";
import { cheap, writeNamedFiles } from "./legal/attack.ts";
import { figureFaults } from "./legal/sound.ts";
import { CORNERS, type StudyData, studyOf, studyText } from "./legal/study.ts";
import { noteTrials, WHOLE } from "./test_attacks.ts";

/** True where the whole attack is asked for. */
const TRIED = Deno.env.get(WHOLE) !== undefined;

const ODD = /(?<![A-Za-z])(?:NaN|-?Infinity|undefined|\[object Object\])(?![A-Za-z])/;

/** Studies in which something that others divide by is nothing. */
const STUDIES: Readonly<Record<string, StudyData>> = {
  "the fan never runs": studyOf({
    "store.fanSeason": "never",
    "tubes.count": 6,
    "tubes.layers": 1,
  }),
  "nothing is ever charged": studyOf({ "store.chargeSeason": "never" }),
  "no heat is needed": studyOf({ "house.heatSetPoint": "-20 degC", "house.heatSeason": "never" }),
  "one tube, least flow": studyOf({
    ...CORNERS["one tube"],
    ...CORNERS["least flow"],
    "tubes.layers": 1,
  }),
  "full insulation": studyOf({ ...CORNERS["full insulation"], "store.meshDepth": "7 m" }),
};

/** Where a text of a run holds what only a fault leaves there. */
function oddIn(name: string, text: string): string[] {
  if (name.endsWith(".html")) return oddInPage(name, text);
  if (name.endsWith(".ipynb")) {
    const { cells } = JSON.parse(text) as { cells: { outputs?: unknown[] }[] };
    return cells.flatMap(({ outputs = [] }) => oddIn(`${name} outputs`, JSON.stringify(outputs)));
  }
  const found = ODD.exec(text);
  return found === null ? [] : [
    `${name}: ${
      text.slice(Math.max(0, found.index - 80), found.index + 40).replaceAll(/\s+/g, " ")
    }`,
  ];
}

/** In a page: its words, without the code that is shown, and its pictures. */
function oddInPage(name: string, html: string): string[] {
  const { document } = parseHTML(html);
  for (const code of document.querySelectorAll("style, details.code, code")) code.remove();
  const pictures = [...document.querySelectorAll("img")].map((image) => {
    const source = image.getAttribute("src") ?? "";
    const bytes = Uint8Array.from(atob(source.split(",")[1] ?? ""), (sign) => sign.charCodeAt(0));
    const svg = source.includes("svg") ? new TextDecoder().decode(bytes) : "";
    return `${image.getAttribute("alt")}\n${svg}`;
  });
  return [document.body.textContent ?? "", ...pictures]
    .flatMap((text, place) =>
      oddIn(`${name} (${place === 0 ? "words" : `picture ${place}`})`, text)
    );
}

async function oddBelow(
  folder: string,
): Promise<{ readonly files: number; readonly odd: string[] }> {
  let files = 0;
  const odd: string[] = [];
  for await (const { name, isDirectory } of Deno.readDir(folder)) {
    const path = join(folder, name);
    if (isDirectory) {
      const below = await oddBelow(path);
      files += below.files;
      odd.push(...below.odd);
    } else {
      files++;
      odd.push(...oddIn(name, await Deno.readTextFile(path)));
    }
  }
  return { files, odd };
}

/** Entries of a list beyond which it is a series, from which no figure is read place by place. */
const MOST_ENTRIES = 24;

/** Ways to the single numbers of a result. */
function* numbersIn(value: unknown, way: readonly string[] = []): Generator<readonly string[]> {
  if (typeof value === "number") yield way;
  if (typeof value !== "object" || value === null || ArrayBuffer.isView(value)) return;
  if (Array.isArray(value) && value.length > MOST_ENTRIES) return;
  for (const [key, part] of Object.entries(value)) yield* numbersIn(part, [...way, key]);
}

/** The same with another value at the end of a way. */
function withAt(value: unknown, [first, ...rest]: readonly string[], other: number): unknown {
  if (first === undefined) return other;
  const copy = Array.isArray(value) ? [...value] : { ...value as object };
  const parts = copy as Record<string, unknown>;
  parts[first] = withAt(parts[first], rest, other);
  return copy;
}

/** No number of any result, were it none, would become a figure that is none. */
function assertNoNumberSpoilsFigures(results: ChapterResults): void {
  let spoiled = 0;
  for (const way of numbersIn(results)) {
    for (const other of [NaN, Infinity]) {
      const figures = studyFigures(withAt(results, way, other) as ChapterResults);
      assertEquals(figureFaults(figures), [], `${way.join(".")} is ${other}`);
      spoiled++;
    }
  }
  assert(spoiled > 500, `only ${spoiled} numbers`);
}

Deno.test("a study whose fan never runs leaves no number that is none in results, hours and drawings", () =>
  inTemporary(async (folder) => {
    await writeNamedFiles(folder);
    const text = studyText(STUDIES["the fan never runs"]!);
    const study = await openStudyText(text, `${folder}/odd.yaml`);
    const run = startRun(study, { cacheFolder: null, computations: cheap() });
    const out = join(folder, "out");
    const { figures } = await writeResults(run, out);
    const inputs = drawingInputs(study, { soil: await run.soil(), tubes: await run.tubes() });
    for (const [name, svg] of Object.entries(drawSheets(inputs, "A4"))) {
      await Deno.writeTextFile(join(out, name), svg);
    }
    const { files, odd } = await oddBelow(out);
    assertEquals(odd, []);
    assert(files > 4, `${files} files`);
    assertEquals(figures["store.recovery"]!.value, null);
    assertNoNumberSpoilsFigures(await run.results());
    await noteTrials(1, `${files} files of a study whose fan never runs`);
  }));

Deno.test("a number that is none is found in a page, a picture and a table", () => {
  // the check itself can fail
  assertEquals(oddIn("a.csv", "1,NaN").length, 1);
  assertEquals(oddIn("a.csv", "Nancy,undefinedness").length, 0);
  const svg = btoa('<svg><path d="M0,NaN"/></svg>');
  const page = (inner: string) =>
    `<!DOCTYPE html><html><body><code>NaN</code>${inner}</body></html>`;
  assertEquals(oddIn("a.html", page("")).length, 0);
  assertEquals(oddIn("a.html", page("<p>-Infinity kWh</p>")).length, 1);
  const picture = `<img alt="x" src="data:image/svg+xml;base64,${svg}">`;
  assertEquals(oddIn("a.html", page(picture)).length, 1);
});

for (const [name, data] of Object.entries(STUDIES)) {
  Deno.test({
    name: `deno task study leaves no number that is none in any file: ${name}` +
      (TRIED ? "" : " (only by the task harm)"),
    ignore: !TRIED,
    fn: () =>
      inTemporary(async (folder) => {
        await writeNamedFiles(folder);
        await Deno.writeTextFile(join(folder, "odd.yaml"), studyText(data));
        const child = task("study", ["odd.yaml", "--out", "out"], folder, {
          env: { WINTERGROUND_CACHE: join(folder, "cache") },
        });
        const { code, stdout, stderr } = await child.output();
        const said = [stdout, stderr].map((bytes) => new TextDecoder().decode(bytes)).join("");
        assertEquals(code, 0, said.slice(-3000));
        assertEquals(oddIn("terminal", said), []);
        const { files, odd } = await oddBelow(join(folder, "out"));
        assertEquals(odd, []);
        assert(files > 40, `${files} files`);
        await noteTrials(1, `${files} files where ${name}`);
      }),
  });
}
