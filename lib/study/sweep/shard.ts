/** Which part of a sweep this process does: as it is told, or as the batch engine says. @module */
import { InputError } from "../../basics/mod.ts";
import type { Shard } from "./types.ts";

/** What the command line says of the parts. */
export interface ShardGiven {
  /** "3/10" */
  readonly shard?: string | undefined;
  /** count of parts; the environment says which */
  readonly shards?: string | undefined;
}

type Environment = (name: string) => string | undefined;

/** Variables that number the tasks of an array, and the number of the first. */
const COUNTERS = [
  ["SLURM_ARRAY_TASK_ID", 1],
  ["JOB_COMPLETION_INDEX", 0],
  ["PARALLEL_SEQ", 1],
] as const;

/**
 * The part of a sweep to do.
 *
 * @param given options of the command line
 * @param environment gives the value of a variable
 * @throws {InputError} where the parts are not known for sure
 */
export function findShard(given: ShardGiven, environment: Environment): Shard {
  if (given.shard !== undefined && given.shards !== undefined) {
    throw new InputError("Cannot use both --shard and --shards: give one");
  }
  if (given.shard !== undefined) return told(given.shard);
  if (given.shards !== undefined) return counted(given.shards, environment);
  return slurmArray(environment) ?? unnumbered(environment);
}

function told(text: string): Shard {
  const [, index, count] = /^(\d+)\/(\d+)$/.exec(text) ?? [];
  const shard = { index: Number(index), count: Number(count), from: "--shard" };
  if (index === undefined || shard.index < 1 || shard.index > shard.count) {
    throw new InputError(`Cannot use --shard "${text}": expected part/parts, such as 3/10`);
  }
  return shard;
}

function counted(text: string, environment: Environment): Shard {
  const count = wholeOf(text);
  if (count === undefined || count < 1) {
    throw new InputError(`Cannot use --shards "${text}": expected how many parts there are`);
  }
  for (const [name, first] of COUNTERS) {
    const value = environment(name);
    if (value === undefined || value === "") continue;
    const index = (wholeOf(value) ?? NaN) - first + 1;
    if (!(index >= 1 && index <= count)) {
      throw new InputError(
        `${name} is ${value}, which is not one of ${count} parts: expected ${first} to ` +
          `${first + count - 1}`,
      );
    }
    return { index, count, from: name };
  }
  throw new InputError(
    `--shards ${count} needs a batch engine that numbers the parts (${
      COUNTERS.map(([name]) => name).join(", ")
    }); give --shard part/${count} instead`,
  );
}

/** An array of Slurm, which says its own size; one with holes does not say which part is which. */
function slurmArray(environment: Environment): Shard | undefined {
  const number = (name: string) => wholeOf(environment(`SLURM_ARRAY_TASK_${name}`) ?? "");
  const [id, count, least, most] = [number("ID"), number("COUNT"), number("MIN"), number("MAX")];
  if (id === undefined) return undefined;
  if (count === undefined || least === undefined) {
    throw new InputError(
      "SLURM_ARRAY_TASK_ID is set, but not SLURM_ARRAY_TASK_COUNT and SLURM_ARRAY_TASK_MIN: give " +
        "--shards, how many parts there are, or --shard 1/1 for all rows",
    );
  }
  const step = number("STEP") ?? 1;
  const index = (id - least) / step + 1;
  const even = most === undefined || (most - least) / step + 1 === count;
  if (!even || !Number.isInteger(index) || index < 1 || index > count) {
    throw new InputError(
      "The array of Slurm has holes, so its tasks do not say which part of the sweep is theirs: " +
        "give --shards, how many parts there are, with task numbers from 1",
    );
  }
  return { index, count, from: "SLURM_ARRAY_TASK_ID" };
}

/** All rows, unless an engine numbers the parts without saying how many there are. */
function unnumbered(environment: Environment): Shard {
  const name = ["JOB_COMPLETION_INDEX", "PARALLEL_SEQ"].find((one) => environment(one));
  if (name === undefined) return { index: 1, count: 1, from: "all rows" };
  throw new InputError(
    `${name} is set, but it does not say how many parts there are: give --shards, or --shard 1/1 ` +
      "for all rows",
  );
}

function wholeOf(text: string): number | undefined {
  return /^\d{1,9}$/.test(text.trim()) ? Number(text) : undefined;
}
