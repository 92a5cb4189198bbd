/**
 * The worker of a live page: takes a study, runs its cases, answers with years. Bundled into the page
 * as one script; knows neither files nor network.
 *
 * @module
 */
import type { ClimateYear } from "../../climate/types.ts";
import type { LiveStudy, ToPage, ToWorker } from "../types.ts";
import { liveSteps } from "./year.ts";

const scope = globalThis as unknown as {
  onmessage: ((event: { readonly data: ToWorker }) => void) | null;
  postMessage(message: ToPage): void;
};

let known: { readonly study: LiveStudy; readonly climate: ClimateYear } | undefined;
/** number of the run that is wanted; 0 where none is */
let wanted = 0;

/** Lets messages in that have come meanwhile. */
function pause(): Promise<void> {
  return new Promise((resume) => setTimeout(resume, 0));
}

async function run({ id, changes, resolution }: ToWorker & { readonly type: "run" }) {
  try {
    if (known === undefined) throw new Error("Cannot compute: the page has sent no study");
    const steps = liveSteps({ ...known, changes, resolution });
    for (;;) {
      await pause();
      if (id !== wanted) return;
      const turn = steps.next();
      if (turn.done === true) {
        scope.postMessage({ type: "result", id, year: turn.value });
        return;
      }
      scope.postMessage({ type: "part", id, ...turn.value });
    }
  } catch (error) {
    scope.postMessage({ type: "fault", id, message: (error as Error).message });
  }
}

scope.onmessage = ({ data }) => {
  if (data.type === "study") {
    known = { study: data.study, climate: data.climate };
    scope.postMessage({ type: "ready" });
  } else if (data.type === "run") {
    wanted = data.id;
    void run(data);
  } else wanted = 0;
};
