/** Tasks of deno.json, started with exactly the permissions they have there. @module */
import { taskWords } from "winterground/commands/task_words.ts";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";

/** How a task is started. */
export interface TaskOptions {
  /** variables besides those of this process */
  readonly env?: Readonly<Record<string, string>>;
  /** folder of the project; this one unless given */
  readonly project?: string;
}

/** A task, called by a person who stands in `folder`. */
export function task(
  name: string,
  args: readonly string[],
  folder: string,
  { env = {}, project = PROJECT_FOLDER }: TaskOptions = {},
): Deno.Command {
  const [run, ...words] = taskWords(name);
  return new Deno.Command(Deno.execPath(), {
    args: [run!, "--no-check", ...words, ...args],
    cwd: project,
    env: { NO_COLOR: "1", ...env, INIT_CWD: folder },
    stdin: "null",
    stdout: "piped",
    stderr: "piped",
  });
}
