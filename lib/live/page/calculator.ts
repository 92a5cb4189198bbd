/** The workers of a page, seen from the page: one case at a time, the last one asked for. @module */
import type { ClimateYear } from "../../climate/types.ts";
import { together, UNKNOWN } from "../parts.ts";
import {
  type Changes,
  LIVE_HALVES,
  type LiveHalf,
  type LivePart,
  type LiveResult,
  type LiveStudy,
  type LiveYear,
  type Resolution,
  type ToPage,
  type ToWorker,
} from "../types.ts";

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
  /** Computes on this weather from now on; what was running is dropped. */
  onWeather(climate: ClimateYear): void;
  run(changes: Changes, resolution: Resolution): void;
  stop(): void;
}

/** What one worker has said of the last run. */
interface Heard {
  readonly share: number;
  readonly part: LivePart;
  readonly result: LiveResult | null;
}

const NOTHING: Heard = { share: 0, part: UNKNOWN, result: null };

/** Everything that the workers know together. */
function allHeard(heard: readonly Heard[]): LivePart {
  return together(heard.map(({ part, result }) => result ?? part));
}

/** Halves of a year for each worker: side by side where the machine can, else one after the other. */
export function halvesOfWorkers(processors: number): readonly (readonly LiveHalf[])[] {
  return processors > 1 ? LIVE_HALVES.map((half) => [half]) : [LIVE_HALVES];
}

/**
 * Starts the workers from their source: a page opened as a file may not load one from a neighbour.
 *
 * @param source of the worker's script
 * @param study that the page carries
 * @param listener hears of the last run only
 */
export function calculator(source: string, study: LiveStudy, listener: Listener): Calculator {
  let last = 0;
  let running = false;
  let heard: Heard[] = [];
  const address = URL.createObjectURL(new Blob([source], { type: "text/javascript" }));
  const hear = (place: number, data: ToPage) => {
    if (data.type === "ready" || data.id !== last || !running) return;
    if (data.type === "fault") {
      running = false;
      return listener.fault(data.message);
    }
    heard[place] = data.type === "part"
      ? { ...data, result: null }
      : { share: 1, part: data.result, result: data.result };
    if (heard.every(({ result }) => result !== null)) {
      running = false;
      return listener.result({ ...heard[0]!.result!, ...allHeard(heard) } as LiveYear);
    }
    listener.part(allHeard(heard), heard.reduce((sum, { share }) => sum + share, 0) / heard.length);
  };
  const workers = halvesOfWorkers(navigator.hardwareConcurrency).map((halves, place) => {
    const worker = new Worker(address);
    // where a policy refuses it there is no exception, only this
    worker.onerror = () => listener.broken();
    worker.onmessage = ({ data }: MessageEvent<ToPage>) => hear(place, data);
    return { worker, halves };
  });
  if (workers.length > 1) {
    const { port1, port2 } = new MessageChannel();
    [port1, port2].forEach((port, place) => {
      const message = { type: "partner", port, reduces: place === 0 } satisfies ToWorker;
      workers[place]!.worker.postMessage(message, [port]);
    });
  }
  const stop = () => {
    running = false;
    for (const { worker } of workers) worker.postMessage({ type: "stop" });
  };
  return {
    onWeather(climate) {
      stop();
      for (const { worker, halves } of workers) {
        worker.postMessage({ type: "study", study, climate, halves });
      }
    },
    run(changes, resolution) {
      running = true;
      heard = workers.map(() => NOTHING);
      last++;
      for (const { worker } of workers) {
        worker.postMessage({ type: "run", id: last, changes, resolution });
      }
    },
    stop,
  };
}
