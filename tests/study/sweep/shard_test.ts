// Property: the parts of an array are told apart as its engine numbers them, or not at all.
import { assertEquals, assertThrows } from "@std/assert";
import { InputError } from "winterground/basics/mod.ts";
import { findShard, type ShardGiven } from "winterground/study/sweep/mod.ts";

type Variables = Readonly<Record<string, string>>;

function found(given: ShardGiven, variables: Variables = {}): readonly [number, number] {
  const { index, count } = findShard(given, (name) => variables[name]);
  return [index, count];
}

function slurm(id: number, count: number, least: number, most: number, step: number): Variables {
  const names = { ID: id, COUNT: count, MIN: least, MAX: most, STEP: step };
  return Object.fromEntries(
    Object.entries(names).map(([name, value]) => [`SLURM_ARRAY_TASK_${name}`, String(value)]),
  );
}

Deno.test("findShard() takes what it is told, or all rows", () => {
  assertEquals(found({}), [1, 1]);
  assertEquals(found({ shard: "3/10" }), [3, 10]);
  // what is told outranks the environment
  assertEquals(found({ shard: "1/1" }, { PARALLEL_SEQ: "7" }), [1, 1]);
});

Deno.test("findShard() takes parts from Slurm, whatever the array starts with and steps by", () => {
  assertEquals(found({}, slurm(1, 10, 1, 10, 1)), [1, 10]);
  assertEquals(found({}, slurm(0, 10, 0, 9, 1)), [1, 10]);
  assertEquals(found({}, slurm(17, 4, 5, 23, 6)), [3, 4]);
  // one task of ten, sent again
  assertEquals(found({ shards: "10" }, slurm(7, 1, 7, 7, 1)), [7, 10]);
});

Deno.test("findShard() takes parts from numbered jobs and GNU parallel with their count", () => {
  assertEquals(found({ shards: "4" }, { JOB_COMPLETION_INDEX: "0" }), [1, 4]);
  assertEquals(found({ shards: "4" }, { JOB_COMPLETION_INDEX: "3" }), [4, 4]);
  assertEquals(found({ shards: "4" }, { PARALLEL_SEQ: "4" }), [4, 4]);
});

Deno.test("findShard() refuses what does not say for sure which part is meant", () => {
  const cases: readonly [ShardGiven, Variables, string][] = [
    [{ shard: "0/3" }, {}, "part/parts"],
    [{ shard: "4/3" }, {}, "part/parts"],
    [{ shard: "two" }, {}, "part/parts"],
    [{ shard: "1/3", shards: "3" }, {}, "give one"],
    [{ shards: "3" }, {}, "--shard part/3"],
    [{ shards: "0" }, { PARALLEL_SEQ: "1" }, "how many parts"],
    [{ shards: "3" }, { PARALLEL_SEQ: "4" }, "not one of 3 parts"],
    [{ shards: "3" }, { JOB_COMPLETION_INDEX: "3" }, "expected 0 to 2"],
    [{}, { PARALLEL_SEQ: "2" }, "--shards"],
    [{}, { JOB_COMPLETION_INDEX: "2" }, "--shards"],
    [{}, slurm(9, 3, 1, 9, 1), "holes"],
    [{}, { SLURM_ARRAY_TASK_ID: "2" }, "SLURM_ARRAY_TASK_COUNT"],
  ];
  for (const [given, variables, words] of cases) {
    assertThrows(() => found(given, variables), InputError, words);
  }
});
