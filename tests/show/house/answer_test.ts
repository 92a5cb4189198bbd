import { assert } from "@std/assert";
import { answer } from "../../../lib/show/house/answer.ts";
import { houseResult } from "./sample.ts";

const text = (item: { readonly "text/plain": string }) =>
  item["text/plain"].replaceAll(/[\u00a0\u202f]/g, " ");

Deno.test("answer() takes the leakage at half and at twice its value", () => {
  // Property: 570 W/K with 110 W/K of leakage gives 515 and 680
  const shown = text(answer(houseResult));
  for (const part of ["515 W/K", "680 W/K", "glazing", "[no]"]) {
    assert(shown.includes(part), `${part} in ${shown}`);
  }
});
