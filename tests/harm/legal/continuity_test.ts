/** A share of the attack on continuity; `continuity_run.ts` runs the whole. @module */
import { assert, assertEquals } from "@std/assert";
import { openStudyText } from "winterground/study/mod.ts";
import { inTemporary } from "../../harness/in_temporary.ts";
import { noteTrials, WHOLE } from "../test_attacks.ts";
import { type Depth, writeNamedFiles } from "./attack.ts";
import { CONTINUITY_BASE, figuresOf, MOST, movesOf, numberKeys } from "./continuity.ts";
import { studyText } from "./study.ts";

/** True where the whole attack is asked for. */
const TRIED = Deno.env.get(WHOLE) !== undefined;

/** What moves more than it may when one number in so many is changed. */
async function over(depth: Depth, every: number) {
  return await inTemporary(async (folder) => {
    await writeNamedFiles(folder);
    const data = CONTINUITY_BASE;
    const study = await openStudyText(studyText(data), `${folder}/legal.yaml`);
    const before = await figuresOf(study, depth);
    const keys = numberKeys(study).filter((_, place) => place % every === 0);
    const moved = [];
    for (const key of keys) {
      moved.push(...await movesOf({ data, study, before, folder }, key, depth));
    }
    assert(moved.length > 0, "a change that moves nothing proves nothing");
    return { tried: keys.length, over: moved.filter(({ share }) => share > MOST[depth]) };
  });
}

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
    const { tried, over: jumps } = await over("store", 1);
    assertEquals(jumps, []);
    await noteTrials(tried, `${tried} numbers changed by a millionth, up to the store's year`);
  },
});
