import { assert } from "@std/assert";
import { answer } from "../../../lib/show/fan/answer.ts";
import { fanInputs, fanResult } from "./sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("answer() says no for a stalled fan", () => {
  // Property: light
  const stalled = { ...fanResult, stalled: true };
  assert(text(answer(stalled, fanInputs)).startsWith("[no]"));
  assert(text(answer(fanResult, fanInputs)).startsWith("[yes]"));
});
