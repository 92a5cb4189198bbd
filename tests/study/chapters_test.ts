import { assert, assertEquals } from "@std/assert";
import {
  type AllResults,
  type AnyChapter,
  CHAPTERS,
  COMPUTATIONS,
} from "../../lib/study/chapters.ts";
import { STUDY_KEYS } from "../../lib/study/file/schema.ts";
import type { Study } from "../../lib/study/mod.ts";

/** What a chapter reads of the study and of earlier results. */
type Reads<C> = C extends {
  readonly name: infer Name;
  readonly takes: (study: infer S, earlier: infer E) => unknown;
} ? readonly [Name, S, E]
  : never;

/** Names of chapters that read something the study or the results do not hold. */
type Misfits<R> = R extends readonly [infer Name, infer S, infer E]
  ? Study extends S ? AllResults extends E ? never : Name : Name
  : never;

Deno.test("a study holds all that its chapters read, as they read it", () => {
  // Property: checked by the compiler; a misfit is a type error in the next line
  const misfits: readonly Misfits<Reads<AnyChapter>>[] = [];
  assertEquals(misfits, []);
});

Deno.test("every computation comes after those it is computed from, under a name of its own", () => {
  // Property: the list of chapters is an order of computation
  const names = CHAPTERS.flatMap(({ name, extras }) => [name, ...Object.keys(extras)]);
  assertEquals(new Set(names).size, names.length);
  assertEquals([...COMPUTATIONS.keys()], names);
  const seen = new Set<string>();
  for (const [name, { after }] of COMPUTATIONS) {
    for (const other of after) {
      assert(seen.has(other), `${name} is computed from ${other}, which comes later`);
    }
    seen.add(name);
  }
});

Deno.test("a chapter has one word everywhere: folders, notebook, page, section of the study file", async () => {
  // Property: a reader who knows the job knows the tree
  const root = new URL("../../", import.meta.url);
  const there = (path: string) => Deno.stat(new URL(path, root)).then(() => true, () => false);
  const notebooks = [...Deno.readDirSync(new URL("notebooks/", root))].map(({ name }) => name);
  for (const { name } of CHAPTERS) {
    for (const file of ["chapter", "fields", "figures", "types", "mod"]) {
      assert(await there(`lib/${name}/${file}.ts`), `lib/${name}/${file}.ts`);
    }
    for (const path of [`lib/show/${name}/mod.ts`, `tests/${name}`, `docs/${name}.md`]) {
      assert(await there(path), path);
    }
    assert(notebooks.some((file) => new RegExp(`^\\d\\d-${name}\\b`).test(file)), name);
    assert(STUDY_KEYS.has(name), name);
  }
});
