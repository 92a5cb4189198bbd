/** The worker of a page, seen from the page: one case at a time, the last one asked for. @module */
import type { ClimateYear } from "../../climate/types.ts";
import type { Changes, LivePart, LiveStudy, LiveYear, Resolution, ToPage } from "../types.ts";

/** Who hears of a run. */
export interface Listener {
  /** first parts of the year, and the share of the work that is done, 0 to 1 */
  part(part: LivePart, share: number): void;
  result(year: LiveYear): void;
  /** the case makes no sense; the message says why */
  fault(message: string): void;
  /** this browser computes nothing */
  broken(): void;
}

/** Runs cases. */
export interface Calculator {
  run(changes: Changes, resolution: Resolution): void;
  stop(): void;
}

/**
 * Starts the worker from its source: a page opened as a file may not load one from a neighbour.
 *
 * @param source of the worker's script
 * @param question study and weather
 * @param listener hears of the last run only
 */
export function calculator(
  source: string,
  question: { readonly study: LiveStudy; readonly climate: ClimateYear },
  listener: Listener,
): Calculator {
  let last = 0;
  let running = false;
  const address = URL.createObjectURL(new Blob([source], { type: "text/javascript" }));
  const worker = new Worker(address);
  // where a policy refuses it there is no exception, only this
  worker.onerror = () => listener.broken();
  worker.onmessage = ({ data }: MessageEvent<ToPage>) => {
    if (data.type === "ready" || data.id !== last || !running) return;
    if (data.type === "part") {
      listener.part(data.part, data.share);
      return;
    }
    running = false;
    if (data.type === "result") listener.result(data.year);
    else listener.fault(data.message);
  };
  worker.postMessage({ type: "study", ...question });
  return {
    run(changes, resolution) {
      running = true;
      worker.postMessage({ type: "run", id: ++last, changes, resolution });
    },
    stop() {
      running = false;
      worker.postMessage({ type: "stop" });
    },
  };
}
