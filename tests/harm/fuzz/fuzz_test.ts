import { assert, assertEquals } from "@std/assert";
import { attackReaders, READERS } from "./attack.ts";
import { attackReader, findingsText } from "./fuzz.ts";
import { inputOf } from "./input.ts";
import { judge } from "./judge.ts";
import { InputError } from "winterground/basics/mod.ts";

/** Inputs of this share of the attack; the task `harm` tries 20 000. */
const COUNT = 600;

Deno.test("every reader gives sound values or refuses in plain words, whatever befell its file", async () => {
  // Property: never another error, a number that is none, or a refusal without its file
  const tallies = await attackReaders(1, COUNT);
  assertEquals(findingsText(tallies), "");
  for (const { reader, tried, read, refused } of tallies) {
    assert(tried === 0 || read + refused === tried, reader);
  }
  const tried = tallies.reduce((sum, tally) => sum + tally.tried, 0);
  const refused = tallies.reduce((sum, tally) => sum + tally.refused, 0);
  // inputs that all pass, or that nothing could read, would try nothing
  assert(refused > 0.3 * tried && refused < 0.95 * tried, `${refused} of ${tried} refused`);
});

Deno.test("an input is the same whenever its seed is the same", async () => {
  // Property: a finding can be tried again
  const bases = await READERS.find(({ name }) => name === "study file")!.bases();
  for (let seed = 0; seed < 50; seed++) {
    assertEquals(inputOf(seed, bases), inputOf(seed, bases));
  }
  const inputs = Array.from({ length: 50 }, (_, seed) => String(inputOf(seed, bases).bytes));
  assert(new Set(inputs).size > 40, "seeds give different inputs");
});

Deno.test("a reader that fails is found out, with the least input that makes it fail", async () => {
  // Property: the attack itself can fail
  const lines = Array.from({ length: 40 }, (_, k) => `${k},${k}`).join("\n");
  const tally = await attackReader(
    {
      name: "weak",
      share: 1,
      bases: () => Promise.resolve([{ name: "numbers", text: lines }]),
      read: async (path) => {
        const cells = (await Deno.readTextFile(path)).split(/[,\n]/);
        if (cells.includes("NaN")) throw new TypeError("weak");
        return null;
      },
    },
    1,
    300,
  );
  const [finding] = tally.findings;
  assert(finding !== undefined && finding.words.startsWith("TypeError: weak"), finding?.words);
  assert(JSON.parse(finding.input).length < 20, finding.input);
});

Deno.test("judge() tells odd numbers, foreign errors and refusals without a file", async () => {
  // Property: the judge itself can fail
  const bytes = new TextEncoder().encode("a");
  const words = async (read: () => unknown) => {
    const verdict = await judge(read, bytes, "/there");
    return verdict.kind === "fault" ? verdict.words : verdict.kind;
  };
  assertEquals(await words(() => ({ a: [1, { b: NaN }] })), "gives.a.1.b is NaN");
  assertEquals(await words(() => new Float64Array([1, Infinity])), "gives[1] is Infinity");
  assertEquals(await words(() => new Map([["x", -Infinity]])), "gives.x is -Infinity");
  assertEquals(await words(() => ({ a: "NaN", b: null })), "read");
  const refuse = (message: string) => () => {
    throw new InputError(message);
  };
  assertEquals(await words(refuse("no")), "no file named: no");
  assertEquals(await words(refuse("/there: no")), "refused");
  assertEquals(await words(refuse("/there: undefined")), 'message with "undefined"');
  assert((await words(() => null!["x" as never])).startsWith("TypeError"));
});
