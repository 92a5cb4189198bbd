/**
 * Bundles the script of live pages: the worker with the library, and the page around it.
 *
 * @module
 */
import { build, type BuildOptions, type Metafile, stop } from "esbuild";
import { join } from "node:path";
import { browserPackages, ROOT } from "./packages.ts";

/** A bundled script. */
export interface Bundle {
  /** minified source */
  readonly text: string;
  /** files in it with the bytes each takes, by path from the project's folder */
  readonly files: Readonly<Record<string, number>>;
}

/** Worker and page; the page's text holds the worker's. */
export interface LiveBundles {
  readonly worker: Bundle;
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
  plugins: [browserPackages],
} as const satisfies BuildOptions;

function filesOf({ outputs }: Metafile): Bundle["files"] {
  const [output] = Object.values(outputs);
  return Object.fromEntries(
    Object.entries(output!.inputs).map(([path, { bytesInOutput }]) => [path, bytesInOutput]),
  );
}

async function bundled(entry: string, define: BuildOptions["define"] = {}): Promise<Bundle> {
  const entryPoints = [join(ROOT, "lib", "live", entry)];
  const { outputFiles, metafile } = await build({ ...OPTIONS, entryPoints, define });
  return { text: outputFiles[0]!.text, files: filesOf(metafile) };
}

/** Bundles both scripts. Starts the bundler's program, so it needs leave to run one. */
export async function bundleLive(): Promise<LiveBundles> {
  try {
    const worker = await bundled("sum/worker.ts");
    const page = await bundled("page/page.ts", { WORKER_SCRIPT: JSON.stringify(worker.text) });
    return { worker, page };
  } finally {
    await stop();
  }
}

if (import.meta.main) {
  const text = JSON.stringify(await bundleLive());
  await Deno.stdout.write(new TextEncoder().encode(text));
}
