/** A share of the attack on continuity; `continuity_run.ts` runs the whole. @module */
import { assert, assertEquals } from "@std/assert";
import { inTemporary } from "../../harness/in_temporary.ts";
import { noteTrials, WHOLE } from "../test_attacks.ts";
import { type Depth, writeNamedFiles } from "./attack.ts";
import { MOST, movesOf, NUMBER_KEYS, studyNumbers, WITHOUT_MILLIONTH } from "./continuity.ts";

/** True where the whole attack is asked for. */
const TRIED = Deno.env.get(WHOLE) !== undefined;

/** What moves more than it may when one number in so many is changed. */
async function over(depth: Depth, every: number) {
  return await inTemporary(async (folder) => {
    await writeNamedFiles(folder);
    const numbers = (await studyNumbers(folder)).filter((_, place) => place % every === 0);
    const moved = [];
    for await (const one of movesOf(numbers, depth, folder)) moved.push(...one);
    assert(moved.length > 0, "a change that moves nothing proves nothing");
    const largest = Math.max(...moved.map(({ share }) => share));
    return {
      tried: numbers.length,
      largest,
      over: moved.filter(({ share }) => share > MOST),
    };
  });
}

Deno.test("every number of the study file is changed by a millionth, but those that have none", () =>
  inTemporary(async (folder) => {
    // Property: a new key is attacked, or says why not
    await writeNamedFiles(folder);
    const found = new Set((await studyNumbers(folder)).map(({ key }) => key));
    assertEquals(NUMBER_KEYS.filter((key) => !found.has(key)), [...WITHOUT_MILLIONTH]);
  }));

Deno.test("a millionth more of a number of the study moves no figure up to the fan by more than its share", async () => {
  // Property: figures follow their inputs without jumps
  assertEquals((await over("fan", 4)).over, []);
});

Deno.test("a millionth more of a number of the study moves no figure of the house by more than its share", async () => {
  // Property: figures follow their inputs without jumps
  assertEquals((await over("house", 40)).over, []);
});

Deno.test({
  name: "a millionth more of every number moves no figure of the whole by more than its share" +
    (TRIED ? "" : " (only by the task harm)"),
  ignore: !TRIED,
  async fn() {
    // Property: figures follow their inputs without jumps, but for those that count steps of the clock
    const { tried, largest, over: jumps } = await over("store", 1);
    await noteTrials(
      tried,
      `${tried} numbers, all but the ${WITHOUT_MILLIONTH.size} that count or name something, up to ` +
        `the store's year and its worth; the largest move ${
          largest.toExponential(0)
        } of a figure ` +
        `(allowed ${MOST})`,
    );
    assertEquals(jumps, []);
  },
});
