/** Tasks of deno.json as words, so that they start with exactly the permissions they have there. @module */
import settings from "../../deno.json" with { type: "json" };

/** Command lines of the tasks by name. */
export const TASKS: Readonly<Record<string, string>> = settings.tasks;

/**
 * The words of a task behind `deno`, with the path of Deno where the task asks for it.
 *
 * @param name one of {@link TASKS}
 */
export function taskWords(name: string): string[] {
  return TASKS[name]!
    .replace(/\$\(deno eval --no-config '[^']*'\)/, Deno.execPath())
    .replaceAll('"', "").split(" ").slice(1);
}
