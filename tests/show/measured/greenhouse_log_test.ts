import { assert, assertRejects } from "@std/assert";
import { InputError } from "../../../lib/basics/mod.ts";
import { RECORDED_SCORES } from "../../../lib/measured/mod.ts";
import { greenhouseLogItems } from "../../../lib/show/measured/greenhouse_log.ts";
import { greenhouseLog, LOG_VARIABLE } from "../../../lib/study/mod.ts";

Deno.test("greenhouseLogItems() without a log says so and where to get it", () => {
  // Property: recorded figures are never passed off as worked out
  const [scores, words] = greenhouseLogItems(null).map((item) => item["text/plain"]);
  assert(scores!.includes("Recorded scores, not computed in this run"));
  for (const { predicted } of RECORDED_SCORES) assert(scores!.includes(predicted), predicted);
  assert(words!.includes(LOG_VARIABLE) && words!.includes("weather.csv"));
});

Deno.test("greenhouseLog() names the file it cannot read", async () => {
  // Property: bad input
  const before = Deno.env.get(LOG_VARIABLE);
  const folder = await Deno.makeTempDir();
  try {
    Deno.env.set(LOG_VARIABLE, folder);
    await assertRejects(() => greenhouseLog(), InputError, "weather.csv");
  } finally {
    if (before === undefined) Deno.env.delete(LOG_VARIABLE);
    else Deno.env.set(LOG_VARIABLE, before);
    await Deno.remove(folder);
  }
});
