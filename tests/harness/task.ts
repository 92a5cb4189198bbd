/** Tasks of deno.json, started with exactly the permissions they have there. @module */
import { taskWords } from "winterground/commands/task_words.ts";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";

/** How a task is started. */
export interface TaskOptions {
  /** variables besides those of this process */
  readonly env?: Readonly<Record<string, string>>;
}

/** A task, called by a person who stands in `folder`. */
export function task(
  name: string,
  args: readonly string[],
  folder: string,
  { env = {} }: TaskOptions = {},
): Deno.Command {
  const [run, ...words] = taskWords(name);
  return new Deno.Command(Deno.execPath(), {
    args: [run!, "--no-check", ...words, ...args],
    cwd: PROJECT_FOLDER,
    env: { NO_COLOR: "1", ...env, INIT_CWD: folder },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  });
}
