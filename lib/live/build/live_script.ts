/** The script of live pages, bundled by a program of Deno of its own: the bundler runs a program. @module */
import { fileURLToPath } from "node:url";
import type { LiveBundles } from "./bundle.ts";
import { ROOT } from "./packages.ts";

let known: Promise<LiveBundles> | undefined;

async function bundle(): Promise<LiveBundles> {
  const { success, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: ["run", "-A", "--no-prompt", fileURLToPath(new URL("./bundle.ts", import.meta.url))],
    cwd: ROOT,
    env: { NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  }).output();
  const decoder = new TextDecoder();
  if (!success) throw new Error(`Cannot bundle the live pages: ${decoder.decode(stderr)}`);
  return JSON.parse(decoder.decode(stdout)) as LiveBundles;
}

/** The scripts; bundled once a process. */
export function liveScript(): Promise<LiveBundles> {
  known ??= bundle();
  return known;
}
