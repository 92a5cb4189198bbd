import { assert, assertEquals } from "@std/assert";
import { liveScript } from "winterground/live/build/live_script.ts";
import { liveStudy } from "winterground/live/build/study_data.ts";
import { together } from "winterground/live/parts.ts";
import { liveYear } from "winterground/live/sum/year.ts";
import type { ToPage, ToWorker } from "winterground/live/types.ts";
import { openSmallStudy } from "../harness/small_study.ts";

const { worker: bundle } = await liveScript();
const small = await openSmallStudy();
const study = JSON.parse(JSON.stringify(liveStudy(small)));
const { climate } = small;

/** Hands messages to the bundled worker; gives what it answers up to the first that ends a run. */
async function answers(...messages: readonly ToWorker[]): Promise<ToPage[]> {
  const address = URL.createObjectURL(new Blob([bundle.text], { type: "text/javascript" }));
  const worker = new Worker(address, { type: "module" });
  const heard: ToPage[] = [];
  try {
    return await new Promise((resolve, reject) => {
      worker.onerror = (event) => reject(new Error(event.message));
      worker.onmessage = ({ data }: MessageEvent<ToPage>) => {
        heard.push(data);
        if (data.type === "result" || data.type === "fault") resolve(heard);
      };
      for (const message of messages) worker.postMessage(message);
    });
  } finally {
    worker.terminate();
    URL.revokeObjectURL(address);
  }
}

const given: ToWorker = { type: "study", study, climate, halves: ["free", "held"] };

Deno.test("the bundled worker gives the library's year, step by step", async () => {
  // Property: minified, with its own tables and packages, the same to the bit
  const changes = { length: 8, moisture: 0.31 };
  const heard = await answers(given, { type: "run", id: 7, changes, resolution: "full" });
  const year = liveYear({ study, climate, changes, resolution: "full" });
  assertEquals(heard.map(({ type }) => type).slice(0, 2), ["ready", "part"]);
  const last = heard.at(-1)!;
  assert(last.type === "result");
  assertEquals([last.id, last.result], [7, year]);
});

Deno.test("halves of a year computed side by side are the year", async () => {
  // Property: what each worker of a page gives, put together, to the bit
  const changes = { leakage: 0.9 };
  const halves = await Promise.all(
    (["free", "held"] as const).map(async (half) => {
      const run = { type: "run", id: 3, changes, resolution: "screening" } as const;
      const last = (await answers({ ...given, halves: [half] }, run)).at(-1)!;
      assert(last.type === "result");
      return last.result;
    }),
  );
  const year = liveYear({ study, climate, changes, resolution: "screening" });
  assertEquals({ ...halves[0], ...together(halves) }, year);
});

Deno.test("a run that is overtaken is given up, and one that makes no sense says why", async () => {
  // Property: the last case asked for is the one answered
  const heard = await answers(
    given,
    { type: "run", id: 1, changes: { leakage: 2 }, resolution: "full" },
    { type: "run", id: 2, changes: { moisture: 0.89 }, resolution: "full" },
  );
  const last = heard.at(-1)!;
  assert(last.type === "fault", last.type);
  assertEquals(last.id, 2);
  assert(/pores/.test(last.message), last.message);
  assertEquals(heard.filter((one) => one.type === "result"), []);
});
