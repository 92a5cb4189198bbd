/**
 * Runs another command of Deno and keeps what it printed.
 *
 * @module
 */
import { PROJECT_FOLDER } from "./terminal.ts";

/** What came of it. */
export interface DenoRun {
  /** true for exit status 0 */
  readonly success: boolean;
  /** standard output and standard error */
  readonly text: string;
}

/** Runs `deno` with these words in the project folder. */
export async function runDeno(
  args: readonly string[],
  signal?: AbortSignal,
): Promise<DenoRun> {
  const { success, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
    args: [...args],
    cwd: PROJECT_FOLDER,
    env: { NO_COLOR: "1", DENO_NO_UPDATE_CHECK: "1" },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
    ...(signal === undefined ? {} : { signal }),
  }).output();
  const decoder = new TextDecoder();
  return { success, text: decoder.decode(stdout) + decoder.decode(stderr) };
}
