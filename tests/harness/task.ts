/** Tasks of deno.json, started with exactly the permissions they have there. @module */
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import settings from "../../deno.json" with { type: "json" };

/** Command lines of the tasks. */
export const TASKS: Readonly<Record<string, string>> = settings.tasks;

/** The words of a task behind `deno`, with the path of Deno where the task asks for it. */
export function taskWords(name: string): string[] {
  return TASKS[name]!
    .replace(/\$\(deno eval --no-config '[^']*'\)/, Deno.execPath())
    .replaceAll('"', "").split(" ").slice(1);
}

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
