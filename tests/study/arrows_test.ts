import { assert, assertEquals } from "@std/assert";
import { dirname, join, relative, resolve } from "node:path";

const LIBRARY = resolve(import.meta.dirname!, "../../lib");
const ORDER = [
  "basics",
  "units",
  "air",
  "sun",
  "climate",
  "soil",
  "house",
  "tubes",
  "headers",
  "fan",
  "store",
  "measured",
  "study",
  "drawings",
  "show",
];
const BASICS = ORDER.slice(0, 4);

async function* sources(folder: string): AsyncGenerator<string> {
  for await (const entry of Deno.readDir(folder)) {
    const path = join(folder, entry.name);
    if (entry.isDirectory) yield* sources(path);
    else if (entry.name.endsWith(".ts")) yield path;
  }
}

async function importsOf(path: string): Promise<string[]> {
  const text = await Deno.readTextFile(path);
  return [...text.matchAll(/(?:from|import)\s*\(?\s*"([^"]+)"/g)].map((match) => match[1]!)
    .filter((name) => name.startsWith(".") && name.endsWith(".ts"))
    .map((name) => relative(LIBRARY, resolve(dirname(path), name)));
}

function mayUse(from: string, to: string): boolean {
  if (from === to || to === "basics") return true;
  if (from === "commands") return true;
  if (from === "press") return false;
  if (BASICS.includes(from)) return BASICS.includes(to);
  return ORDER.indexOf(to) >= 0 && ORDER.indexOf(to) < ORDER.indexOf(from);
}

Deno.test("imports run one way through the library", async () => {
  // Property: basics before chapters in the order of the job, then measured, study,
  // drawings, show; the press uses only the basics; nothing but commands uses mod.ts.
  const faults: string[] = [];
  let seen = 0;
  for await (const path of sources(LIBRARY)) {
    const own = relative(LIBRARY, path);
    const from = own.split("/")[0]!;
    if (own === "mod.ts") continue;
    for (const name of await importsOf(path)) {
      seen++;
      const to = name.split("/")[0]!;
      if (name === "mod.ts" ? from !== "commands" : !mayUse(from, to)) {
        faults.push(`lib/${own} imports lib/${name}`);
      }
    }
  }
  assert(seen > 100, `only ${seen} imports seen`);
  assertEquals(faults, []);
});
