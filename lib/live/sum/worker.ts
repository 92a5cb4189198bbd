/**
 * The worker of a live page: takes a study, runs its cases, answers with years. Bundled into the page
 * as one script; knows neither files nor network.
 *
 * @module
 */
import type { ToPage, ToWorker } from "../types.ts";
import { PACKAGES } from "./packages.ts";
import { type Partner, partnerOver } from "./partner.ts";
import { halfSteps } from "./year.ts";

const scope = globalThis as unknown as {
  onmessage: ((event: { readonly data: ToWorker }) => void) | null;
  postMessage(message: ToPage): void;
  packages: typeof PACKAGES;
};
scope.packages = PACKAGES;

let known: Omit<ToWorker & { readonly type: "study" }, "type"> | undefined;
/** the worker of the other half; null where this one computes both */
let partner: Partner | null = null;
type Run = Omit<ToWorker & { readonly type: "run" }, "type">;

/** Number of the run that nobody has asked for. */
const NOBODY = 0;
/** number of the run that is wanted */
let wanted = NOBODY;

/** Lets messages in that have come meanwhile. */
function pause(): Promise<void> {
  return new Promise((resume) => setTimeout(resume, 0));
}

async function run({ id, changes, resolution }: Run, post: (message: ToPage) => void) {
  try {
    if (known === undefined) throw new Error("Cannot compute: the page has sent no study");
    const { study, climate, halves } = known;
    const steps = halfSteps({ study, climate, changes, resolution }, halves);
    for (;;) {
      await pause();
      if (id !== wanted) return;
      const turn = steps.next();
      if (turn.done === true) {
        post({ type: "result", id, result: turn.value });
        return;
      }
      const { share, part, reducesNext } = turn.value;
      post({ type: "part", id, share, part });
      if (reducesNext !== null) await partner?.reduced(id, reducesNext);
    }
  } catch (error) {
    post({ type: "fault", id, message: (error as Error).message });
  }
}

/** Works out what every case starts from, while nobody waits: the next moves are quick. */
function prepare(): void {
  void run({ id: NOBODY, changes: {}, resolution: "screening" }, () => {});
}

scope.onmessage = ({ data }) => {
  if (data.type === "study") {
    known = data;
    scope.postMessage({ type: "ready" });
    prepare();
    return;
  }
  if (data.type === "partner") {
    partner = partnerOver(data.port, data.reduces);
    return;
  }
  wanted = data.type === "run" ? data.id : NOBODY;
  partner?.release();
  if (data.type === "run") void run(data, (message) => scope.postMessage(message));
};
