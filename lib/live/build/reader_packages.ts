/**
 * Packages as the reader of weather files takes them: the same code, less of it.
 *
 * @module
 */
import type { OnLoadArgs, Plugin, PluginBuild } from "esbuild";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { ROOT } from "./packages.ts";

/**
 * The checks of data that a columns file asks for, in English: the package brings sixty languages. It
 * would try whether it may evaluate text, which breaks the page's policy though it fails.
 */
const CHECKS = `
import { array, boolean, enum as oneOf, number, strictObject, string, union } from
  "./v4/classic/schemas.js";
import { config, NEVER } from "./v4/core/core.js";
config({ jitless: true });
export const z = { array, boolean, enum: oneOf, number, strictObject, string, union, NEVER };
`;

/** Packages that the year's script brings: the reader's runs behind it. */
const BROUGHT: Readonly<Record<string, string>> = {
  "ml-matrix": "export const { Matrix, solve } = globalThis.packages;",
  "nrel-spa": "export const { getSpa, SPA_ZA } = globalThis.packages;",
  psychrolib: "export default globalThis.packages.psychrolib;",
};

/** A module of its own text. */
function stands(build: PluginBuild, filter: RegExp, text: (path: string) => string): void {
  const namespace = String(filter);
  build.onResolve({ filter }, ({ path }) => ({
    path: join(ROOT, "node_modules", path, "stands"),
    pluginData: path,
    namespace,
    sideEffects: false,
  }));
  build.onLoad({ filter: /./, namespace }, ({ path, pluginData }) => ({
    contents: text(pluginData),
    loader: "js",
    resolveDir: dirname(path),
  }));
}

/** What nobody asks of the reader: schemas as JSON. */
const SCHEMAS = /\/(?:json-schema-processors|to-json-schema)\.js$/;

/** What only keys that are no words ask of it: YAML written. */
const WRITTEN = /\/yaml\/browser\/dist\/stringify\/\w+\.js$/;
const NO_WORD = '() => { throw new Error("a key is a list or a section; write a word"); }';

/** The names of a module with the same behind each. */
async function namesWith({ path }: OnLoadArgs, value: string) {
  const text = await Deno.readTextFile(path);
  const names = [
    ...text.matchAll(/^export (?:const|function|class) (\w+)/gm),
    ...text.matchAll(/^export \{ (\w+(?:, \w+)*) \};/gm),
  ].flatMap(([, found]) => found!.split(", ").map((name) => `none as ${name}`));
  return {
    contents: `const none = ${value}; export { ${names.join(", ")} };`,
    loader: "js" as const,
  };
}

/** Packages of the reader beside those of every script; goes before them. */
export const readerPackages: Plugin = {
  name: "reader packages",
  setup(build: PluginBuild): void {
    build.onResolve({ filter: /^\.\/unit_library\.ts$/ }, () => ({
      path: join(ROOT, "lib", "live", "read", "page_units.ts"),
      sideEffects: false,
    }));
    stands(build, /^zod$/, () => CHECKS);
    stands(build, /^(?:ml-matrix|nrel-spa|psychrolib)$/, (name) => BROUGHT[name]!);
    build.onLoad({ filter: SCHEMAS }, (file) => namesWith(file, "() => () => ({})"));
    build.onLoad({ filter: WRITTEN }, (file) => namesWith(file, NO_WORD));
    build.onResolve({ filter: /^papaparse$/ }, () => ({
      path: createRequire(import.meta.url).resolve("papaparse/papaparse.min.js"),
      sideEffects: false,
    }));
  },
};
