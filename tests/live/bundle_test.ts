import { assert, assertEquals } from "@std/assert";
import { gzipSync } from "node:zlib";
import { liveScript } from "winterground/live/build/live_script.ts";
import { table } from "./bundle_table.ts";

/** Bytes: what a page may weigh on a slow line. */
const MOST_WORKER = 300_000;
const MOST_PACKED = 200_000;

const { worker, reader, page } = await liveScript();

Deno.test("the script of a live page stays small", () => {
  // Property: sizes of the minified worker and of the whole script, packed as servers pack it
  const bytes = new TextEncoder().encode(worker.text).length;
  const packed = gzipSync(page.text, { level: 9 }).length;
  assert(bytes <= MOST_WORKER, `the worker has ${bytes} bytes:\n${table(worker)}`);
  assert(
    packed <= MOST_PACKED,
    `the script has ${packed} bytes packed:\n${table(page)}\n${table(reader)}`,
  );
  assert(page.text.length > worker.text.length + reader.text.length, "the page holds both workers");
});

Deno.test("nothing of Deno, Node or the readers of files is in what computes", () => {
  // Property: no import reaches these; one through a collecting module would bring them
  const files = [...Object.keys(worker.files), ...Object.keys(page.files)];
  assert(files.length > 150, `only ${files.length} files seen`);
  const foreign = files.filter((path) =>
    /node_modules\/(?:zod|mathjs|yaml|papaparse|zeromq|linkedom)\/|^node:|lib\/(?:press|commands)\//
      .test(path) || /^lib\/study\//.test(path)
  );
  assertEquals(foreign, []);
  const ofReader = Object.keys(reader.files);
  assertEquals(
    ofReader.filter((path) => /mathjs\/|^node:|lib\/(?:press|commands|study)\//.test(path)),
    [],
  );
  for (const { text } of [worker, reader, page]) {
    for (const word of [/\bDeno\./, /\beval\(/, /\bnew Function\b/, /\bcreateRequire\b/]) {
      assert(!word.test(text), `${word} in the script`);
    }
  }
  // else zod tries it under another name
  assert(/\bjitless: ?(?:!0|true)/.test(reader.text), "zod may evaluate text");
});
