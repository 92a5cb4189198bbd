/**
 * A few workers that share pieces of work. Plain data goes in and out, so the answers do not depend
 * on who gives them.
 *
 * @module
 */
import type { Piece } from "../../basics/mod.ts";
import { errorOf } from "./faults.ts";
import type { WorkerAnswer, WorkerRequest } from "./pool_worker.ts";

/** Workers, and the pieces that wait for them. */
export interface WorkPool {
  /** number of workers at most */
  readonly size: number;
  /**
   * Has a piece done.
   *
   * @param piece the work
   * @param rank pieces of lower rank go first, those of one rank in turn
   */
  do<Answer>(piece: Piece<Answer>, rank?: number): Promise<Answer>;
  /** Starts all workers now, so that they are ready when there is work. */
  warm(): void;
  /** Ends the workers; pieces that wait are refused. */
  close(): void;
}

/** How a pool is made. */
export interface PoolOptions {
  /** number of workers; as many as the machine has cores, eight at most, unless given */
  readonly size?: number;
  /** module that exports `TASKS`; those of the chapters unless given */
  readonly tasks?: URL;
  /** ms without work after which the workers end; they start again with the next piece */
  readonly rest?: number;
}

/** Workers beyond this bring little and each holds the library. */
const MOST_WORKERS = 8;
/** ms */
const REST = 5000;

interface Job {
  readonly piece: Piece<unknown>;
  readonly rank: number;
  readonly done: (answer: unknown) => void;
  readonly fail: (error: unknown) => void;
  /** workers that ended while they did it */
  losses: number;
}

interface Member {
  readonly worker: Worker;
  job: Job | undefined;
}

/** Starts a pool; no worker runs before there is work. */
export function workPool(options: PoolOptions = {}): WorkPool {
  const size = options.size ?? Math.min(MOST_WORKERS, navigator.hardwareConcurrency);
  const tasks = options.tasks ?? new URL("./tasks.ts", import.meta.url);
  const waiting: Job[] = [];
  const members = new Set<Member>();
  let resting: ReturnType<typeof setTimeout> | undefined;
  let closed = false;

  function join(): Member {
    const worker = new Worker(new URL("./pool_worker.ts", import.meta.url), { type: "module" });
    const member: Member = { worker, job: undefined };
    worker.onmessage = ({ data }: MessageEvent<WorkerAnswer>) => finish(member, data);
    worker.onerror = (event) => {
      event.preventDefault();
      lose(member, event.message);
    };
    worker.postMessage({ tasks: tasks.href } satisfies WorkerRequest);
    members.add(member);
    return member;
  }

  function finish(member: Member, data: WorkerAnswer): void {
    const job = member.job;
    member.job = undefined;
    if ("answer" in data) job?.done(data.answer);
    else job?.fail(errorOf(data.fault));
    handOut();
  }

  /** A worker ended by itself: its piece is done once more, by another. */
  function lose(member: Member, reason: string): void {
    members.delete(member);
    member.worker.terminate();
    const { job } = member;
    if (job !== undefined && ++job.losses < 2) waiting.unshift(job);
    else job?.fail(new Error(`A worker ended twice in "${job.piece.task.name}": ${reason}`));
    handOut();
  }

  function handOut(): void {
    while (waiting.length > 0) {
      const idle = [...members].find(({ job }) => job === undefined) ??
        (members.size < size ? join() : undefined);
      if (idle === undefined) return;
      const job = waiting.shift()!;
      idle.job = job;
      const { task: { name }, question } = job.piece;
      try {
        idle.worker.postMessage({ task: name, question } satisfies WorkerRequest);
      } catch (error) { // not plain data
        idle.job = undefined;
        job.fail(error);
      }
    }
    if ([...members].every(({ job }) => job === undefined)) restSoon();
  }

  function restSoon(): void {
    clearTimeout(resting);
    resting = setTimeout(endAll, options.rest ?? REST);
    Deno.unrefTimer(resting);
  }

  function endAll(): void {
    clearTimeout(resting);
    for (const { worker, job } of members) {
      worker.terminate();
      job?.fail(new Error("The workers were ended"));
    }
    members.clear();
  }

  return {
    size,
    do: <Answer>(piece: Piece<Answer>, rank = 0) =>
      new Promise<Answer>((done, fail) => {
        if (closed) throw new Error("The workers were ended");
        clearTimeout(resting);
        const job = { piece, rank, done: done as Job["done"], fail, losses: 0 };
        const place = waiting.findIndex((other) => other.rank > rank);
        waiting.splice(place < 0 ? waiting.length : place, 0, job);
        handOut();
      }),
    warm: () => {
      while (members.size < size) join();
    },
    close: () => {
      closed = true;
      for (const { fail } of waiting.splice(0)) fail(new Error("The workers were ended"));
      endAll();
    },
  };
}
