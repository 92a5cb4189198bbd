import { assert, assertEquals, assertRejects } from "@std/assert";
import { join } from "node:path";
import {
  alone,
  type AnyTask,
  InputError,
  OutOfRangeError,
  type Piece,
  piece,
  shared,
} from "../../../lib/basics/mod.ts";
import { houseMeasures } from "../../../lib/house/mod.ts";
import { rankingSteps } from "../../../lib/store/ranking.ts";
import { startRun } from "../../../lib/study/mod.ts";
import { hashOf } from "../../../lib/study/run/hash.ts";
import { type WorkPool, workPool } from "../../../lib/study/run/pool.ts";
import { openSmallStudy } from "../../harness/small_study.ts";
import { standInRequest } from "../../store/stand_in.ts";
import { TASKS } from "./pool_tasks.ts";

const tasks = new URL("./pool_tasks.ts", import.meta.url);

function named(name: string, question?: unknown): Piece<unknown> {
  return piece(TASKS.get(name) as AnyTask, question);
}

async function withPool(size: number, use: (pool: WorkPool) => Promise<void>): Promise<void> {
  const pool = workPool({ size, tasks });
  try {
    await use(pool);
  } finally {
    pool.close();
  }
}

Deno.test("sums give the same bytes with no, one and three workers", async () => {
  // Property: who does a piece of the work decides nothing; settled years, and results in one piece
  const study = await openSmallStudy();
  const request = standInRequest({ store: { slices: 1, spinUpYears: 0 } });
  const steps = () =>
    rankingSteps(request, undefined, houseMeasures(request.houseInputs).slice(0, 2));
  const whole = ["soil", "tubes", "headers", "fan", "headersVariants"];
  const hashes = async (pool?: WorkPool) => {
    const run = startRun(study, { cacheFolder: null, pool });
    const getters = run as unknown as Readonly<Record<string, () => Promise<unknown>>>;
    return await Promise.all([
      pool === undefined ? alone(steps()) : shared(steps(), (one) => pool.do(one)),
      ...whole.map((name) => getters[name]!()),
    ].map(async (result) => hashOf(await result)));
  };
  const own = await hashes();
  for (const size of [1, 3]) {
    const pool = workPool({ size });
    try {
      assertEquals(await hashes(pool), own, `${size} workers`);
    } finally {
      pool.close();
    }
  }
});

Deno.test("pieces are answered each with its own, lower ranks first", async () => {
  // Property: order of answers and of work
  await withPool(2, async (pool) => {
    const answers = await Promise.all(
      Array.from({ length: 20 }, (_, k) => pool.do(named("double", Float64Array.of(k, -k)))),
    );
    assertEquals(answers, Array.from({ length: 20 }, (_, k) => Float64Array.of(2 * k, -2 * k)));
  });
  await withPool(1, async (pool) => {
    const order: number[] = [];
    const ranks = [5, 3, 1, 3, 0];
    await Promise.all(ranks.map(async (rank, k) => {
      await pool.do(named("double", Float64Array.of(k)), rank);
      order.push(k);
    }));
    assertEquals(order, [0, 4, 2, 1, 3], "the first is at work already");
  });
});

Deno.test("an error in a worker keeps kind, text, place and stack", async () => {
  // Property: the reader sees what the sum alone would have said; the worker goes on
  await withPool(1, async (pool) => {
    const refused = await assertRejects(() => pool.do(named("refuse")), InputError);
    assertEquals(refused.message, "farm.yaml:7: expected a length, found 3 apples");
    assertEquals((refused as InputError).location, { file: "farm.yaml", line: 7 });
    assert(/pool_tasks\.ts:\d+:\d+/.test(refused.stack ?? ""), refused.stack);
    const range = await assertRejects(() => pool.do(named("range", 3)), OutOfRangeError);
    assertEquals([range.name, (range as OutOfRangeError).value], ["OutOfRangeError", 3]);
    assertEquals(await pool.do(named("double", Float64Array.of(2))), Float64Array.of(4));
    await assertRejects(
      () => pool.do(piece({ name: "unheard", run: () => 0 }, 0)),
      Error,
      '"unheard"',
    );
  });
});

Deno.test("a worker that ends takes no work with it; one that ends again and again is named", async () => {
  // Property: a lost worker is replaced and its piece done once more
  const folder = await Deno.makeTempDir();
  try {
    await withPool(2, async (pool) => {
      const [lost, other] = await Promise.all([
        pool.do(named("endOnce", join(folder, "ended"))),
        pool.do(named("double", Float64Array.of(1))),
      ]);
      assertEquals([lost, other], ["done", Float64Array.of(2)]);
      await assertRejects(() => pool.do(named("end")), Error, 'twice in "end"');
      assertEquals(await pool.do(named("double", Float64Array.of(3))), Float64Array.of(6));
    });
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
});

Deno.test("a closed pool refuses what waits", async () => {
  // Property: nothing is left hanging
  const pool = workPool({ size: 1, tasks });
  const waiting = [0, 1, 2].map((k) => pool.do(named("double", Float64Array.of(k))));
  pool.close();
  for (const one of waiting) await assertRejects(() => one, Error, "ended");
  await assertRejects(() => pool.do(named("double", Float64Array.of(0))), Error, "ended");
});
