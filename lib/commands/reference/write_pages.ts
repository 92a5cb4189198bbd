/**
 * Makes the reference pages from the project's files, and says where they are stale.
 *
 * @module
 */
import { join, relative } from "node:path";
import { pathToFileURL } from "node:url";
import settings from "../../../deno.json" with { type: "json" };
import { studyJsonSchemaText } from "../../study/file/json_schema.ts";
import { keysPage } from "../../study/file/keys_page.ts";
import { CommandFailure, PROJECT_FOLDER } from "../terminal.ts";
import {
  BIBLIOGRAPHY,
  bibliographyFaults,
  citations,
  readBibliography,
  type Source,
  type TextFile,
  uncitedNames,
  unnamedSources,
} from "./bibliography.ts";
import { checkedBy, type Resolver } from "./checked_by.ts";
import { functionsPage, sourcesPage, symbolsPage, withSourceLinks } from "./pages.ts";
import { type DocOutput, publicFunctions } from "./public_functions.ts";
import { mergeSymbols, symbolFaults, symbolRows } from "./symbols.ts";

const MADE = ["docs/functions.md", "docs/symbols.md", "docs/sources.md", "docs/keys.md"];
/** Rooms whose symbols another room's page explains. */
const PAGE_OF: Readonly<Record<string, string>> = { air: "tubes" };

/** The files of the project that the reference pages are made from. */
interface ProjectFiles {
  readonly sources: readonly Source[];
  /** library and tests */
  readonly code: readonly TextFile[];
  /** pages of the documentation written by hand */
  readonly pages: readonly TextFile[];
  /** tables of data and the page about them */
  readonly data: readonly TextFile[];
}

async function readProject(): Promise<ProjectFiles> {
  const [library, tests, docs, data] = await Promise.all([
    textFiles("lib", ".ts"),
    textFiles("tests", ".ts"),
    textFiles("docs", ".md"),
    Promise.all([textFiles("data", ".csv"), textFiles("data", ".md")]),
  ]);
  return {
    sources: readBibliography(await Deno.readTextFile(join(PROJECT_FOLDER, BIBLIOGRAPHY))),
    code: [
      ...library,
      ...tests.filter(({ path }) => !path.startsWith("tests/commands/reference/")),
    ],
    pages: docs.filter(({ path }) => !MADE.includes(path)),
    data: data.flat().filter(({ path }) => path !== BIBLIOGRAPHY),
  };
}

async function textFiles(folder: string, ending: string): Promise<TextFile[]> {
  const found: TextFile[] = [];
  for await (const entry of Deno.readDir(join(PROJECT_FOLDER, folder))) {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory) found.push(...await textFiles(path, ending));
    else if (entry.name.endsWith(ending)) {
      found.push({ path, text: await Deno.readTextFile(join(PROJECT_FOLDER, path)) });
    }
  }
  return found.sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** Every page that the task writes, laid out as the formatter wants it. */
export async function referencePages(signal: AbortSignal): Promise<TextFile[]> {
  const project = await readProject();
  const cited = citations([...project.code, ...project.pages, ...project.data]);
  const texts: TextFile[] = [
    { path: MADE[0]!, text: await functionsText(project, signal) },
    { path: MADE[1]!, text: symbolsPage(mergeSymbols(project.pages.flatMap(symbolRows))) },
    { path: MADE[2]!, text: sourcesPage(project.sources, cited) },
    { path: MADE[3]!, text: keysPage() },
  ];
  const formatted = await Promise.all(
    texts.map(async ({ path, text }) => ({ path, text: await formatMarkdown(text, signal) })),
  );
  return [
    ...formatted,
    { path: "docs/study.schema.json", text: studyJsonSchemaText() },
    ...project.pages.map(({ path, text }) => ({ path, text: withSourceLinks(text) })),
  ];
}

async function functionsText(project: ProjectFiles, signal: AbortSignal): Promise<string> {
  const exported = new Map(
    Object.entries(settings.exports).map(([name, path]) => [
      name.replace(/^\./, "winterground"),
      pathToFileURL(join(PROJECT_FOLDER, path)).href,
    ]),
  );
  const printed = await deno(["doc", "--quiet", "--json", ...exported.values()], "", signal);
  const root = pathToFileURL(PROJECT_FOLDER).href;
  const modules = publicFunctions(JSON.parse(printed) as DocOutput, exported, root);
  return functionsPage(modules, checkedBy(testFiles(project), resolver(project)));
}

function testFiles({ code }: ProjectFiles): TextFile[] {
  return code.filter(({ path }) => path.endsWith("_test.ts"));
}

function resolver({ code }: ProjectFiles): Resolver {
  const names = Object.entries(settings.imports)
    .filter(([name]) => name.startsWith("winterground"))
    .map(([name, path]) => [name, path.replace(/^\.\//, "")] as const);
  return { library: new Map(code.map(({ path, text }) => [path, text])), names: new Map(names) };
}

async function formatMarkdown(text: string, signal: AbortSignal): Promise<string> {
  return await deno(["fmt", "--quiet", "--ext", "md", "-"], text, signal);
}

/** Runs `deno` on an input and gives what it prints. */
async function deno(args: string[], input: string, signal: AbortSignal): Promise<string> {
  const child = new Deno.Command(Deno.execPath(), {
    args,
    cwd: PROJECT_FOLDER,
    env: { NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" },
    stdin: "piped",
    stdout: "piped",
    stderr: "piped",
    signal,
  }).spawn();
  const writer = child.stdin.getWriter();
  await writer.write(new TextEncoder().encode(input));
  await writer.close();
  const { success, stdout, stderr } = await child.output();
  if (!success) throw new CommandFailure(new TextDecoder().decode(stderr));
  return new TextDecoder().decode(stdout);
}

/** What is wrong with citations, symbols and the reference pages. */
export async function referenceFaults(signal: AbortSignal): Promise<string[]> {
  const project = await readProject();
  const cited = citations([...project.code, ...project.pages, ...project.data]);
  const library = project.code.filter(({ path }) => path.startsWith("lib/"));
  return [
    ...bibliographyFaults(project.sources, cited),
    ...library.flatMap(unnamedSources),
    ...[...project.code, ...project.data, ...project.pages].flatMap(uncitedNames),
    ...project.pages.flatMap((page) =>
      symbolRows(page).length === 0 ? [] : symbolFaults(page, chapterOf(page, library))
    ),
    ...await stalePages(signal),
  ];
}

function chapterOf(page: TextFile, library: readonly TextFile[]): TextFile[] {
  const name = page.path.replace(/^docs\/|\.md$/g, "");
  return library.filter(({ path }) => {
    const room = relative("lib", path).split(/[\\/]/)[0]!;
    return (PAGE_OF[room] ?? room) === name;
  });
}

async function stalePages(signal: AbortSignal): Promise<string[]> {
  const faults: string[] = [];
  for (const { path, text } of await referencePages(signal)) {
    const kept = await Deno.readTextFile(join(PROJECT_FOLDER, path)).catch(() => null);
    if (kept !== text) faults.push(`${path}: stale: run deno task reference`);
  }
  return faults;
}
