/** Made-up tasks for the workers of pool_test.ts. */
import type { AnyTask } from "../../../lib/basics/mod.ts";
import { InputError, requireInRange } from "../../../lib/basics/mod.ts";

/** Throws outside the answer, which ends the worker. */
function endWorker(): Promise<never> {
  setTimeout(() => {
    throw new Error("out of memory, say");
  });
  return new Promise(() => {});
}

/** The first worker that gets it ends; the next finds the file and answers. */
async function endOnce(file: string): Promise<string> {
  const again = await Deno.stat(file).then(() => true, () => false);
  if (again) return "done";
  await Deno.writeTextFile(file, "");
  return await endWorker();
}

const LIST: readonly AnyTask[] = [
  { name: "double", run: (values: Float64Array) => values.map((value) => 2 * value) },
  {
    name: "refuse",
    run: () => {
      throw new InputError("expected a length, found 3 apples", { file: "farm.yaml", line: 7 });
    },
  },
  { name: "range", run: (value: number) => requireInRange("slope", value, 0, 1, "1") },
  { name: "end", run: endWorker },
  { name: "endOnce", run: endOnce },
];

export const TASKS: ReadonlyMap<string, AnyTask> = new Map(LIST.map((task) => [task.name, task]));
