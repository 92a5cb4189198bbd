/**
 * Asks a thread of its own for the outputs of a study.
 *
 * @module
 */
import type { ResultsFile } from "../study/mod.ts";
import type { OutputsRequest } from "./study_outputs.ts";
import type { OutputsAnswer } from "./study_worker.ts";
import { CommandFailure } from "./terminal.ts";

/** Faults whose message is made for the person who runs the study. */
const USER_FAULTS = new Set(["InputError", "InputErrors", "OutOfRangeError", "NotConvergedError"]);

/**
 * Computes and writes the outputs.
 *
 * @throws {CommandFailure} when the study cannot be computed
 */
export async function computeOutputs(
  request: OutputsRequest,
  signal: AbortSignal,
): Promise<ResultsFile> {
  signal.throwIfAborted();
  const worker = new Worker(new URL("./study_worker.ts", import.meta.url), { type: "module" });
  try {
    const answer = await new Promise<OutputsAnswer>((done, fail) => {
      worker.onmessage = (event: MessageEvent<OutputsAnswer>) => done(event.data);
      worker.onerror = (event) => {
        event.preventDefault();
        fail(new CommandFailure(`${request.path}: ${event.message}`));
      };
      signal.addEventListener("abort", () => fail(signal.reason));
      worker.postMessage(request);
    });
    if ("results" in answer) return answer.results;
    const { name, message } = answer.fault;
    const reason = USER_FAULTS.has(name) ? message : `${name}: ${message}`;
    throw new CommandFailure(`${request.path}: the study cannot be computed: ${reason}`);
  } finally {
    worker.terminate();
  }
}
