/**
 * Writes the outputs of a study in a thread of its own, so that an interrupt is heard while the
 * chapters compute.
 *
 * @module
 */
import { type OutputsRequest, writeStudyOutputs } from "./study_outputs.ts";
import type { ResultsFile } from "../study/mod.ts";

/** What the thread sends back. */
export type OutputsAnswer =
  | { readonly results: ResultsFile }
  | { readonly fault: { readonly name: string; readonly message: string } };

const thread = globalThis as unknown as {
  onmessage: ((event: MessageEvent<OutputsRequest>) => void) | null;
  postMessage(answer: OutputsAnswer): void;
};

thread.onmessage = async (event) => {
  try {
    thread.postMessage({ results: await writeStudyOutputs(event.data) });
  } catch (error) {
    const { name, message } = error instanceof Error ? error : new Error(String(error));
    thread.postMessage({ fault: { name, message } });
  }
};
