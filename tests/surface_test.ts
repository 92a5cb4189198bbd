import { assert, assertEquals } from "@std/assert";
import settings from "../deno.json" with { type: "json" };
import { blankTexts, parseNotebook } from "../lib/press/mod.ts";

const project = new URL("../", import.meta.url);
const surface = new Map<string, ReadonlySet<string>>();
for (const path of Object.keys(settings.exports)) {
  const name = path.replace(/^\./, "winterground");
  surface.set(name, new Set(Object.keys(await import(name))));
}

/** Files of a folder with one of the endings, with its sub-folders. */
function* filesOf(folder: URL, endings: RegExp): Generator<URL> {
  for (const entry of Deno.readDirSync(folder)) {
    const at = new URL(entry.isDirectory ? `${entry.name}/` : entry.name, folder);
    if (entry.isDirectory) yield* filesOf(at, endings);
    else if (endings.test(entry.name)) yield at;
  }
}

const codeOf = (file: URL) =>
  parseNotebook(Deno.readTextFileSync(file), file.pathname).cells
    .filter((cell) => cell.cell_type === "code").map((cell) => cell.source).join("\n");

/** What code takes from the public modules: "module name", one entry a name. */
function taken(code: string): string[] {
  const found: string[] = [];
  for (const [, names, module] of code.matchAll(/import \{([^}]*)\} from "([^"]+)"/g)) {
    found.push(
      ...names!.split(",").map((name) => name.trim()).filter((name) => name !== "")
        .map((name) => `${module} ${name}`),
    );
  }
  const rest = blankTexts(code);
  for (const [, space, module] of code.matchAll(/import \* as (\w+) from "([^"]+)"/g)) {
    for (const [, name] of rest.matchAll(new RegExp(`(?<![\\w.]|\\. )${space}\\.(\\w+)`, "g"))) {
      found.push(`${module} ${name}`);
    }
  }
  return found;
}

/** What code of the library takes from the modules of air, sun and units. */
function takenByRooms(code: string): string[] {
  return [...code.matchAll(/import \{([^}]*)\} from "[./]+\/(air|sun|units)\/mod\.ts"/g)].flatMap(
    ([, names, room]) => names!.split(",").map((name) => `winterground/${room} ${name.trim()}`),
  );
}

const notebooks = [...filesOf(new URL("notebooks/", project), /^\d\d-.*\.ipynb$/)];

for (const file of notebooks) {
  Deno.test(`${file.pathname.split("/").at(-1)} takes only what the public modules offer`, () => {
    // Property: each name a notebook uses is exported by the module it names
    const names = taken(codeOf(file));
    assert(names.length > 5, `only ${names.length} names found`);
    const missing = names.filter((one) => {
      const [module, name] = one.split(" ");
      return surface.get(module!)?.has(name!) !== true;
    });
    assertEquals(missing, []);
  });
}

Deno.test("a public module can be imported under the name it is exported by", () => {
  // Property: imports and exports of deno.json name the same files
  const imports: Readonly<Record<string, string>> = settings.imports;
  for (const [path, file] of Object.entries(settings.exports)) {
    assertEquals(imports[path.replace(/^\./, "winterground")], file);
  }
});

Deno.test("everything public is used by a notebook, a command, an example, a test or another room", () => {
  // Property: no export that nobody asks for; rooms meet in the modules of air, sun and units
  const used = new Set(notebooks.flatMap((file) => taken(codeOf(file))));
  const read = (folder: string, endings: RegExp) =>
    [...filesOf(new URL(folder, project), endings)].map((file) => Deno.readTextFileSync(file));
  const examples = [...read("lib/", /\.ts$/), ...read("docs/", /\.md$/)].flatMap((text) =>
    [...text.matchAll(/```ts\b[\s\S]*?```/g)].map(([example]) => example)
  );
  const texts = [...examples, ...read("lib/commands/", /\.ts$/), ...read("tests/", /\.ts$/)]
    .join("\n");
  const words = new Set(texts.match(/\w+/g));
  const rooms = new Set(
    read("lib/", /\.ts$/).flatMap(takenByRooms),
  );
  const idle = [...surface].flatMap(([module, names]) =>
    [...names].map((name) => `${module} ${name}`)
      .filter((one) => !used.has(one) && !rooms.has(one) && !words.has(one.split(" ")[1]!))
  );
  assertEquals(idle, []);
});
