/** A worker: does one piece after the other and answers each. @module */
import type { AnyTask } from "../../basics/mod.ts";
import { type Fault, faultOf } from "./faults.ts";

/** What a worker is asked first, then for each piece. */
export type WorkerRequest =
  | { readonly tasks: string }
  | { readonly task: string; readonly question: unknown };

/** What it answers to a piece. */
export type WorkerAnswer = { readonly answer: unknown } | { readonly fault: Fault };

const thread = globalThis as unknown as {
  onmessage: ((event: MessageEvent<WorkerRequest>) => void) | null;
  postMessage(answer: WorkerAnswer): void;
};

let tasks: Promise<{ readonly TASKS: ReadonlyMap<string, AnyTask> }> | undefined;

thread.onmessage = async ({ data }) => {
  if ("tasks" in data) {
    tasks = import(data.tasks);
    tasks.catch(() => {}); // said with the first piece
    return;
  }
  try {
    const task = (await tasks!).TASKS.get(data.task);
    if (task === undefined) throw new Error(`No worker knows the task "${data.task}"`);
    thread.postMessage({ answer: await task.run(data.question) });
  } catch (error) {
    thread.postMessage({ fault: faultOf(error) });
  }
};
