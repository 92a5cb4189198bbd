import { assert } from "@std/assert";
import { answer } from "../../../lib/show/headers/answer.ts";
import { tubesResult } from "../tubes/sample.ts";
import { headersResult } from "./sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("answer() counts the tubes outside ten per cent", () => {
  // Property: shares of the sample run from 0.88 to 1.12 in two layers of ten
  const inputs = { layout: "Z" } as Parameters<typeof answer>[1];
  const result = { ...headersResult, heatFactor: 0.99 };
  const shown = text(answer(result, inputs, tubesResult));
  assert(shown.includes("4 of 20 are outside ±10 %"), shown);
  assert(shown.includes("tube 1 gets least"), shown);
  assert(shown.startsWith("[no]"));
});
