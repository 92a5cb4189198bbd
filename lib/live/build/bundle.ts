/**
 * Bundles the script of live pages: the worker with the library, the reader of weather files, and the
 * page around them.
 *
 * @module
 */
import { build, type BuildOptions, type Metafile, type Plugin, stop } from "esbuild";
import { join } from "node:path";
import { browserPackages, ROOT } from "./packages.ts";
import { readerPackages } from "./reader_packages.ts";
import { unitTable } from "./unit_table.ts";

/** A bundled script. */
export interface Bundle {
  /** minified source */
  readonly text: string;
  /** files in it with the bytes each takes, by path from the project's folder */
  readonly files: Readonly<Record<string, number>>;
}

/** Workers and page; the page's text holds those of the workers. */
export interface LiveBundles {
  /** computes years */
  readonly worker: Bundle;
  /** reads weather files; started with the first of them */
  readonly reader: Bundle;
  readonly page: Bundle;
}

const OPTIONS = {
  bundle: true,
  minify: true,
  format: "iife",
  platform: "browser",
  target: "es2022",
  charset: "utf8",
  legalComments: "none",
  metafile: true,
  write: false,
  logLevel: "silent",
  absWorkingDir: ROOT,
} as const satisfies BuildOptions;

function filesOf({ outputs }: Metafile): Bundle["files"] {
  const [output] = Object.values(outputs);
  return Object.fromEntries(
    Object.entries(output!.inputs).map(([path, { bytesInOutput }]) => [path, bytesInOutput]),
  );
}

async function bundled(
  entry: string,
  values: Readonly<Record<string, unknown>> = {},
  plugins: readonly Plugin[] = [browserPackages],
): Promise<Bundle> {
  const entryPoints = [join(ROOT, "lib", "live", entry)];
  const define = Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, JSON.stringify(value)]),
  );
  const given = { ...OPTIONS, entryPoints, define, plugins: [...plugins] };
  const { outputFiles, metafile } = await build(given);
  return { text: outputFiles[0]!.text, files: filesOf(metafile) };
}

/** Bundles the scripts. Starts the bundler's program, so it needs leave to run one. */
export async function bundleLive(): Promise<LiveBundles> {
  try {
    const worker = await bundled("sum/worker.ts");
    const reader = await bundled(
      "read/worker.ts",
      { UNIT_TABLE: unitTable() },
      [readerPackages, browserPackages],
    );
    const scripts = { WORKER_SCRIPT: worker.text, READER_SCRIPT: reader.text };
    return { worker, reader, page: await bundled("page/page.ts", scripts) };
  } finally {
    await stop();
  }
}

if (import.meta.main) {
  const text = JSON.stringify(await bundleLive());
  await Deno.stdout.write(new TextEncoder().encode(text));
}
