/**
 * The worker that computes the other half of a year. Both halves stand on the same soil: the first
 * worker reduces it and hands it over, the second waits, for two cores that reduce side by side
 * stand in each other's way at their caches.
 *
 * @module
 */
import type { StoreRequest } from "../../store/request.ts";
import { isKept, keepSlice, type SliceQuestion } from "../../store/seasons/soil_model.ts";
import type { ReducedSlice } from "../../store/solver/reduced/slice.ts";
import { reducedStore, soilOf } from "./settled.ts";

/** From the worker that reduces to the one that waits. */
export interface ToPartner {
  /** number of the run */
  readonly id: number;
  /** null where the partner has it, or where the case makes no sense */
  readonly soil: { readonly question: SliceQuestion; readonly slice: ReducedSlice } | null;
}

/** A worker's link to the other. */
export interface Partner {
  /** Has the soil of a store reduced, here or there; ends early where it is released. */
  reduced(id: number, request: StoreRequest): Promise<void>;
  /** Waits no longer: the run is overtaken. */
  release(): void;
}

/** The worker that reduces. */
function reducing(port: MessagePort): Partner {
  let last: ReducedSlice | null = null;
  const tell = (message: ToPartner) => port.postMessage(message);
  return {
    reduced(id, request) {
      let soil: ToPartner["soil"] = null;
      try {
        const { slice } = reducedStore(request);
        if (slice !== last) soil = { question: soilOf(request), slice };
        last = slice;
      } finally {
        tell({ id, soil });
      }
      return Promise.resolve();
    },
    release() {},
  };
}

/** The worker that waits. */
function waiting(port: MessagePort): Partner {
  let told: number | null = null;
  let resume = () => {};
  port.onmessage = ({ data }: MessageEvent<ToPartner>) => {
    if (data.soil !== null) keepSlice(data.soil.question, data.soil.slice);
    told = data.id;
    resume();
  };
  return {
    async reduced(id, request) {
      if (told === id || isKept(soilOf(request))) return;
      await new Promise<void>((done) => resume = done);
    },
    release: () => resume(),
  };
}

/**
 * Links a worker to the other.
 *
 * @param port to it
 * @param reduces true for the worker that reduces the soil of both
 */
export function partnerOver(port: MessagePort, reduces: boolean): Partner {
  return reduces ? reducing(port) : waiting(port);
}
