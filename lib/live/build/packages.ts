/**
 * Packages and tables as a page's script takes them: the same code, less of it.
 *
 * @module
 */
import type { OnLoadArgs, OnResolveArgs, Plugin, PluginBuild } from "esbuild";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { leanTable } from "./lean_table.ts";

/** Folder of the project. */
export const ROOT: string = fileURLToPath(new URL("../../../", import.meta.url));
const LIBRARY = join(ROOT, "lib");

/** Replaces a text that must stand there once; a new version of a package may read otherwise. */
function replaceOnce(text: string, found: string, by: string): string {
  const parts = text.split(found);
  if (parts.length !== 2) {
    throw new Error(
      `Cannot bundle nrel-spa: expected \`${found}\` once, found it ${parts.length - 1} times`,
    );
  }
  return parts.join(by);
}

/**
 * The package of the sun's position asks Node for a file of its own, which no browser has: the file is
 * imported instead.
 */
async function sunPackage({ path }: OnLoadArgs) {
  const text = await Deno.readTextFile(path);
  const withoutNode = replaceOnce(
    replaceOnce(text, "import { createRequire as __cr } from 'node:module';", ""),
    "const __require = __cr(import.meta.url);",
    'import spaFile from "../lib/spa.cjs"; const __require = undefined;',
  );
  return {
    contents: replaceOnce(withoutNode, '_load("../lib/spa.cjs")', "spaFile"),
    loader: "js" as const,
  };
}

/** Nothing of the library does anything but define: what is not used is left out, barrels too. */
function libraryFile({ importer, path }: OnResolveArgs) {
  return importer.startsWith(LIBRARY) && path.endsWith(".ts")
    ? { path: join(dirname(importer), path), sideEffects: false }
    : undefined;
}

function inPackages(path: string): { readonly path: string; readonly sideEffects: false } {
  return { path: join(ROOT, "node_modules", path), sideEffects: false };
}

/** The library and its packages for a browser. */
export const browserPackages: Plugin = {
  name: "browser packages",
  setup(build: PluginBuild): void {
    build.onResolve({ filter: /^\.\.?\// }, libraryFile);
    // its modules one by one, of which most are left out
    build.onResolve({ filter: /^ml-matrix$/ }, () => inPackages("ml-matrix/src/index.js"));
    // asked for by a flag that the library never sets
    build.onResolve(
      { filter: /\/dc\/svd$|^\.\/svd$/ },
      ({ importer }) =>
        importer.includes("ml-matrix")
          ? { path: join(import.meta.dirname!, "no_decomposition.ts"), sideEffects: false }
          : undefined,
    );
    build.onResolve({ filter: /^papaparse$/ }, () => ({
      path: join(import.meta.dirname!, "table_line.ts"),
      sideEffects: false,
    }));
    build.onLoad({ filter: /nrel-spa[\\/]dist[\\/]index\.mjs$/ }, sunPackage);
    build.onLoad({ filter: /\.csv$/ }, async ({ path }) => ({
      contents: leanTable(await Deno.readTextFile(path)),
      loader: "text",
    }));
  },
};
