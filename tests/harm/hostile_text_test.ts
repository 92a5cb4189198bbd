// Property: text of a user's stands in pages, pictures, tables and on the terminal as text, whatever it says, or is refused in plain words; long because it follows texts through every chapter and page.
import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import Papa from "papaparse";
import { parseHTML } from "linkedom";
import { InputError, type ResultTable } from "winterground/basics/mod.ts";
import { compareRuns, writeComparison } from "winterground/commands/comparison.ts";
import { studyWorkbook } from "winterground/commands/study_report.ts";
import { drawingInputs, drawSheets } from "winterground/drawings/mod.ts";
import { readFans } from "winterground/fan/mod.ts";
import { parseLogMap, parseSensorList } from "winterground/measured/mod.ts";
import { renderWorkbook } from "winterground/press/mod.ts";
import { answerCard } from "winterground/show/kit/answer.ts";
import { figure } from "winterground/show/kit/figure.ts";
import { numbers, paragraph, table } from "winterground/show/kit/table.ts";
import { openStudyText, type ResultsFile, startRun, type Study } from "winterground/study/mod.ts";
import { tableCsv } from "winterground/study/results/tables.ts";
import { writeResults } from "winterground/study/results/write_results.ts";
import {
  headLine,
  readRows,
  readSweep,
  rowLine,
  tableColumns,
} from "winterground/study/sweep/mod.ts";
import { readPriceList } from "winterground/worth/mod.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { openSmallStudy, writeSmallStudy } from "../harness/small_study.ts";
import { task } from "../harness/task.ts";
import { pageFaults } from "../press/page_faults.ts";
import { tinyNotebook } from "../press/tiny.ts";
import { noteTrials } from "./test_attacks.ts";

/** Texts that mean something to a terminal, a page, a picture, a spreadsheet or a formula. */
const HOSTILE: readonly string[] = [
  "bed \u001b[2J\u001b]0;owned\u0007 3",
  "bed \u009b31m 3",
  "bed \u202egnp.exe\u202c 3",
  "bed \u2066\u0000 3",
  "<script>alert(1)</script><img src=x onerror=alert(2)>",
  "</title></style></svg></text><script>alert(1)</script><!--",
  `" onload="alert(1)' autofocus ' \\ \` &amp; &#x3c;`,
  "$\\frac{1$ and $$\\href{javascript:alert(1)}{x}$$",
  "one | two | three",
  "one\ntwo\r\nthree\u2028four",
  "=cmd|' /C calc'!A0",
  '=HYPERLINK("https://example.org/"&A1)',
  "+1+1",
  "-1+1",
  "@SUM(A1:A9)",
  `x"\n=1+1,"`,
  "w".repeat(10_000),
  "👩‍🌾🌱 Åbo, 苗床, دفيئة",
  "a \ud800 half",
  "../../../elsewhere",
  "con",
  "__proto__",
  "${alert(1)} {{1}} %s %n",
];

const OBEYED =
  // deno-lint-ignore no-control-regex -- those are the signs sought
  /[\0-\x08\v\f\x0e-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069\ufffe\uffff]|\p{Surrogate}/u;

function assertInert(text: string, what: string): void {
  const found = OBEYED.exec(text);
  assert(
    found === null,
    `${what}: ${JSON.stringify(text.slice((found?.index ?? 0) - 20).slice(0, 60))}`,
  );
}

/** What work gives, or null where it refuses in plain words. */
async function givenOrRefused<T>(what: string, work: () => T | Promise<T>): Promise<T | null> {
  try {
    return await work();
  } catch (error) {
    assert(error instanceof InputError, `${what}: ${(error as Error).stack}`);
    assertInert(error.message, `refusal of ${what}`);
    assert(error.message.length < 4000, `refusal of ${what}: ${error.message.length} signs`);
    return null;
  }
}

/** Pictures in a page, as their SVG. */
function pictures(html: string): string[] {
  return [...html.matchAll(/src="data:image\/svg\+xml;base64,([^"]*)"/g)]
    .map(([, base64]) =>
      new TextDecoder().decode(Uint8Array.from(atob(base64!), (sign) => sign.charCodeAt(0)))
    );
}

/** A picture holds no more than with harmless words, and nothing that acts. */
function assertPicture(svg: string, harmless: string, what: string): void {
  assertInert(svg, what);
  const names = (text: string) =>
    [...parseHTML(text).document.querySelectorAll("*")].map(({ tagName }) => tagName.toLowerCase())
      .filter((name) => name !== "text" && name !== "tspan"); // a line of words
  assertEquals(names(svg).filter((name) => /script|foreign|image|^a$|iframe/.test(name)), [], what);
  assertEquals(names(svg), names(harmless), what);
}

/** A page loads and runs nothing, and holds no sign that a terminal obeys. */
function assertPage(html: string, what: string): void {
  assertEquals(pageFaults(html), [], what);
  assertInert(html, what);
}

/** Cells of a CSV that a spreadsheet would compute. */
function computed(csv: string): string[] {
  const { data } = Papa.parse<string[]>(csv.trimEnd());
  return data.flat().filter((cell) => /^[=+\-@\t\r]/.test(cell) && !Number.isFinite(Number(cell)));
}

function assertTable(csv: string, what: string): void {
  assertEquals(computed(csv), [], what);
  assertInert(csv, what);
}

/** Words as a page shows them: white space as one blank. */
const plainly = (text: string) => text.replaceAll(/\s+/g, " ").trim();

const KEYS = [
  "study.name",
  "study.title",
  "study.author",
  "study.question",
  "place.name",
  "fan.note",
];

/** The small study with one text changed. */
function withText(base: string, key: string, value: string): string {
  const [section, name] = key.split(".") as [string, string];
  const line = `${name}: ${JSON.stringify(value)}`;
  if (section === "study") return `${base}study: {${line}}\n`;
  return base.replace(
    new RegExp(`^${section}: \\{(?:name: Testfield, )?`, "m"),
    () => `${section}: {${line}, `,
  );
}

const PROVENANCE = {
  studyHash: "a",
  climateHash: "b",
  library: { version: "1", hash: "c" },
  deno: "2.9.6",
  time: "2026-01-01T00:00:00Z",
};

/** A finished run in whose every text the words stand. */
function resultsWith(words: string): ResultsFile {
  const key = `${words.slice(0, 200)}`;
  return {
    study: { name: words, title: words, author: words, question: words, units: "SI" },
    inputs: { place: { name: words }, fan: { note: words, [key]: words } },
    provenance: { ...PROVENANCE, studyHash: words },
    figures: {
      "worth.verdict": { value: words, unit: "text", label: words },
      [key]: { value: words.length, unit: words, label: words },
    },
    notices: [{ level: "warning", chapter: "soil", text: words }],
  };
}

Deno.test("hostile text in a study file stands as text in report, drawings and results, or is refused", () =>
  inTemporary(async (folder) => {
    const path = await writeSmallStudy(folder);
    const base = await Deno.readTextFile(path);
    const plain = await openSmallStudy();
    const run = startRun(plain, { cacheFolder: null });
    const found = { soil: await run.soil(), tubes: await run.tubes() };
    const sheets = (study: Study) => drawSheets(drawingInputs(study, found), "A4");
    const harmless = sheets(plain);
    let [read, refused] = [0, 0];
    for (const key of KEYS) {
      for (const words of HOSTILE) {
        const what = `${key}: ${words.slice(0, 40)}`;
        const study = await givenOrRefused(
          what,
          () => openStudyText(withText(base, key, words), path),
        );
        if (study === null) {
          refused++;
          continue;
        }
        read++;
        assert(!/[/\\]|^\./.test(study.heading.name), `${what}: a name that leaves its folder`);
        const report = studyWorkbook(study, { ...resultsWith(words), study: study.heading }, []);
        assertPage(report, what);
        const { document } = parseHTML(report);
        const shown = plainly(document.querySelector("header")?.textContent ?? "");
        if (key !== "fan.note" && key !== "study.name") {
          assert(shown.includes(plainly(words)), `${what}: is not shown`);
        }
        if (key !== "study.title") continue;
        for (const [name, svg] of Object.entries(sheets(study))) {
          assertPicture(svg, harmless[name]!, `${name}: ${what}`);
        }
        const target = join(folder, String(read));
        await writeResults(startRun(study, { cacheFolder: null }), target, ["soil"]);
        const json = await Deno.readTextFile(join(target, "results.json"));
        assertInert(json, what);
        assertEquals(JSON.parse(json).study.title, words.trim(), what);
      }
    }
    assert(read > 60 && refused > 30, `${read} read, ${refused} refused`);
    await noteTrials(read + refused, `${read + refused} texts in a study file, ${refused} refused`);
  }));

Deno.test("hostile text in prices, fans, logs and sweeps stands as text in pages, pictures and tables", async () => {
  const quoted = (words: string) => `"${words.replaceAll('"', '""')}"`;
  let [read, refused] = [0, 0];
  const harmless = chartOf("plain");
  for (const words of HOSTILE) {
    const shown: unknown[] = [words];
    const readers: readonly (readonly [string, () => unknown])[] = [
      ["prices", () =>
        readPriceList(
          `id,item,price,unit,currency,life_years,date,source\nsump,${quoted(words)},180,pieces,${
            quoted(words)
          },,2026-03-01,${quoted(words)}\n`,
          "prices.csv",
        )],
      ["fans", () =>
        readFans(
          "id,name,air_flow_m3_per_s,static_pressure_Pa,power_W,outlet_area_m2,source\n" +
            [[0, 330], [0.1, 300], [0.3, 100], [0.4, 0]].map(([flow, rise]) =>
              `own,${quoted(words)},${flow},${rise},150,0.08,${quoted(words)}\n`
            ).join(""),
          "fans.csv",
        )],
      ["log map", () =>
        parseLogMap(
          JSON.stringify({
            loggers: {
              [words]: {
                time: { timeZone: "UTC-6" },
                sensors: {
                  [words]: { column: words, quantity: "airTemperature", unit: "degC", zone: words },
                },
              },
            },
          }),
          "map.yaml",
        )],
      ["sensor list", () =>
        parseSensorList(
          `sensor,logger,files,quantity,unit,zone,depth,time_zone,stamp,note\n${quoted(words)},${
            quoted(words)
          },${quoted(words)},airTemperature,degC,inside,,UTC-6,end,${quoted(words)}\n`,
          "sensors.csv",
        )],
    ];
    for (const [what, reader] of readers) {
      const given = await givenOrRefused(`${what}: ${words.slice(0, 40)}`, reader);
      if (given === null) refused++;
      else read++, shown.push(given);
    }
    const texts = shown.flatMap(textsIn);
    for (const text of new Set(texts)) {
      const what = text.slice(0, 60);
      const notebook = tinyNotebook("# Made up", "1;");
      const cell = notebook.cells[1]!;
      assert(cell.cell_type === "code");
      const items = [
        table([{ text }], [{ head: text, value: (row) => row.text }], text),
        numbers([{ label: text, value: text, note: text }], text),
        paragraph(text),
        answerCard({
          light: "yes",
          answer: text,
          range: text,
          drivenBy: text,
          changesWith: text,
        }),
        chartOf(text),
      ];
      cell.outputs = items.map((data) => ({
        output_type: "display_data",
        data: { ...data },
        metadata: {},
      }));
      const html = renderWorkbook({
        title: text,
        facts: [[text, text]],
        notices: [{ level: text, about: text, text }],
        sections: [{ name: "01-made-up", notebook }],
        provenance: [[text, text]],
      });
      assertPage(html, what);
      for (const svg of pictures(html)) {
        assertPicture(svg, pictures(harmless["text/html"] as string)[0]!, what);
      }
      const given: ResultTable = {
        name: "made-up",
        heads: ["text", "number (K)"],
        rows: [[text, -1.5]],
      };
      assertTable(tableCsv(given), what);
    }
  }
  assert(read > 40, `${read} read, ${refused} refused`);
  await noteTrials(
    read + refused,
    `${read + refused} in prices, fans and logs, ${refused} refused`,
  );
});

/** A chart whose every word is this text. */
function chartOf(text: string) {
  return figure({ x: { domain: ["a", "b"], label: text }, y: { label: text }, marks: [] }, {
    title: text,
    alt: text,
    note: text,
    legend: [{ label: text.slice(0, 40).replaceAll(/\s+/g, " "), colour: "#111", sign: "line" }],
    table: { heads: [text], numeric: [false], rows: [[text]] },
  });
}

/** Every text in a value, names of its parts too. */
function textsIn(value: unknown): string[] {
  if (typeof value === "string") return [value];
  if (typeof value !== "object" || value === null) return [];
  if (value instanceof Map) return [...value].flatMap(textsIn);
  return Object.entries(value).flatMap(([name, part]) => [
    ...(Array.isArray(value) ? [] : [name]),
    ...textsIn(part),
  ]);
}

Deno.test("hostile text in the rows of a sweep is no formula, and the rows can be read again", () =>
  inTemporary(async (folder) => {
    for (const words of HOSTILE) {
      const text = `keys:\n  fan.note: [${JSON.stringify(words)}, plain]\n`;
      const plan = await givenOrRefused(`sweep: ${words}`, () => readSweep(text, "sweep.yaml"));
      if (plan === null) continue;
      const figures = [{ key: "worth.verdict", unit: "text", label: words, unchanged: words }];
      const line = rowLine(
        {
          row: 1,
          values: [words],
          figures: { "worth.verdict": { value: words, unit: "text", label: words } },
          fault: words,
        },
        plan.keys,
        figures,
      );
      const columns = tableColumns(plan.keys, figures);
      const csv = `${headLine(columns)}\n${line}\n`;
      assertTable(csv, words.slice(0, 40));
      const path = join(folder, "rows.csv");
      await Deno.writeTextFile(path, csv);
      const { rows } = await readRows(path, columns);
      assertEquals([...rows.keys()], [1], words.slice(0, 40));
    }
    await noteTrials(HOSTILE.length, `${HOSTILE.length} in rows of a sweep`);
  }));

Deno.test("hostile text in finished runs stands as text in their comparison", () =>
  inTemporary(async (folder) => {
    for (const words of HOSTILE) {
      const what = words.slice(0, 40);
      const runs = [words, `${words} again`].map((text) => ({
        folder: join(folder, "runs", text.slice(0, 60)),
        results: resultsWith(text),
        hours: null,
      }));
      const comparison = compareRuns(runs[0]!, runs[1]!);
      await writeComparison(comparison, folder);
      assertPage(await Deno.readTextFile(join(folder, "differences.html")), what);
      assertTable(await Deno.readTextFile(join(folder, "differences.csv")), what);
    }
    await noteTrials(HOSTILE.length, `${HOSTILE.length} in compared runs`);
  }));

Deno.test("hostile text in cells and outputs of a notebook acts on nothing in the report", async () => {
  for (const words of HOSTILE) {
    const notebook = tinyNotebook(`# ${words}\n\n${words}\n\n| a |\n|---|\n| ${words} |\n`, words);
    const cell = notebook.cells.find(({ cell_type }) => cell_type === "code");
    if (cell?.cell_type === "code") {
      const types = ["text/plain", "text/html", "text/markdown", "image/svg+xml", "image/png"];
      cell.outputs = [
        { output_type: "stream", name: words, text: words },
        { output_type: "error", ename: words, evalue: words, traceback: [words] },
        ...types.map((type) => ({
          output_type: "display_data" as const,
          data: { [type]: words },
          metadata: {},
        })),
      ];
    }
    const html = renderWorkbook({
      title: "x",
      facts: [],
      notices: [],
      sections: [{ name: words, notebook }],
      provenance: [],
    });
    assertPage(html, words.slice(0, 40));
  }
  await noteTrials(HOSTILE.length, `${HOSTILE.length} in notebooks`);
});

Deno.test("hostile file names and files print nothing that a terminal obeys", () =>
  inTemporary(async (folder) => {
    let tried = 0;
    const names = HOSTILE.filter((words) => !words.includes("\0") && !/\p{Surrogate}/u.test(words));
    // one that is there, one that is not
    const [there, missing] = ["bed \u001b[2J\u202e.yaml", names[0]!];
    await Deno.writeTextFile(
      join(folder, there),
      `place: {"\u009b31m\u001b[2J": <b>, name: "=1"}\n`,
    );
    const calls: readonly (readonly [string, readonly string[]])[] = [
      ["study", [there]],
      ["study", [missing, "--out", names[2]!]],
      ["climate", [there]],
      ["sweep", [there, there]],
      ["compare", [there, missing]],
    ];
    for (const [name, args] of calls) {
      const { code, stdout, stderr } = await task(name, args, folder).output();
      const text = [stdout, stderr].map((bytes) => new TextDecoder().decode(bytes)).join("");
      assertEquals(code, 2, text);
      assert(text.trim() !== "", name);
      assertInert(text, `${name} ${args.join(" ")}`);
      assert(!/\bat .*\.ts:\d+/.test(text), text);
      tried++;
    }
    await noteTrials(tried, `${tried} commands`);
  }));
