import { assert, assertEquals } from "@std/assert";
import { liveScript } from "winterground/live/build/live_script.ts";
import { liveStudy } from "winterground/live/build/study_data.ts";
import { together } from "winterground/live/parts.ts";
import type { ToPartner } from "winterground/live/sum/partner.ts";
import { liveYear } from "winterground/live/sum/year.ts";
import type { ToPage, ToWorker } from "winterground/live/types.ts";
import { samePlain } from "winterground/basics/mod.ts";
import { reducedSlice } from "winterground/store/seasons/soil_model.ts";
import { openSmallStudy } from "../harness/small_study.ts";

const { worker: bundle } = await liveScript();
const small = await openSmallStudy();
const study = JSON.parse(JSON.stringify(liveStudy(small)));
const { climate } = small;

/** Ports in a message, which go over to whom it is sent. */
const portsIn = (message: ToWorker) => message.type === "partner" ? [message.port] : [];

/**
 * Hands messages to the bundled worker; gives what it answers up to the first that ends a run.
 *
 * @param messages to it
 * @param listen is told each answer as it comes
 */
async function answers(
  messages: readonly ToWorker[],
  listen: (answer: ToPage) => void = () => {},
): Promise<ToPage[]> {
  const address = URL.createObjectURL(new Blob([bundle.text], { type: "text/javascript" }));
  const worker = new Worker(address, { type: "module" });
  const heard: ToPage[] = [];
  try {
    return await new Promise((resolve, reject) => {
      worker.onerror = (event) => reject(new Error(event.message));
      worker.onmessage = ({ data }: MessageEvent<ToPage>) => {
        heard.push(data);
        listen(data);
        if (data.type === "result" || data.type === "fault") resolve(heard);
      };
      for (const message of messages) worker.postMessage(message, portsIn(message));
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
  const heard = await answers([given, { type: "run", id: 7, changes, resolution: "full" }]);
  const year = liveYear({ study, climate, changes, resolution: "full" });
  assertEquals(heard.map(({ type }) => type).slice(0, 2), ["ready", "part"]);
  const last = heard.at(-1)!;
  assert(last.type === "result");
  assertEquals([last.id, last.result], [7, year]);
});

Deno.test("halves of a year computed side by side are the year, the soil reduced by one for both", async () => {
  // Property: what each worker of a page gives, put together, to the bit; new soil and the study's own
  for (const changes of [{ leakage: 0.9 }, { count: 9 }]) {
    const { port1, port2 } = new MessageChannel();
    const halves = await Promise.all(
      ([["free", port1], ["held", port2]] as const).map(async ([half, port]) => {
        const partner = { type: "partner", port, reduces: half === "free" } as const;
        const run = { type: "run", id: 3, changes, resolution: "screening" } as const;
        const last = (await answers([partner, { ...given, halves: [half] }, run])).at(-1)!;
        assert(last.type === "result");
        return last.result;
      }),
    );
    const year = liveYear({ study, climate, changes, resolution: "screening" });
    assertEquals({ ...halves[0], ...together(halves) }, year);
  }
});

Deno.test("a worker waits for the soil of its case until its partner tells of it, or it is overtaken", async () => {
  // Property: nothing but the first part before; where the partner has none, it reduces it itself
  const { port1, port2 } = new MessageChannel();
  const run = { type: "run", changes: {}, resolution: "screening" } as const;
  let told = false;
  let before = 0;
  const tell = setTimeout(() => {
    told = true;
    port1.postMessage({ id: 8, soil: null } satisfies ToPartner);
  }, 1000);
  const heard = await answers([
    { type: "partner", port: port2, reduces: false },
    { ...given, halves: ["held"] },
    { ...run, id: 7 },
    { ...run, id: 8 },
  ], (answer) => {
    if (answer.type === "part" && !told) before = Math.max(before, answer.share);
  });
  clearTimeout(tell);
  port1.close();
  assert(told);
  assert(before < 0.1, `${before}`);
  const last = heard.at(-1)!;
  assert(last.type === "result");
  assertEquals(last.id, 8);
  const { figures } = liveYear({ study, climate, changes: {}, resolution: "screening" });
  assertEquals(last.result.figures.backupHeat, figures.backupHeat);
});

Deno.test("the worker that reduces hands its soil over, to the bit", async () => {
  // Property: what the library makes of the same question
  const { port1, port2 } = new MessageChannel();
  const told: ToPartner[] = [];
  const ofRun = new Promise<void>((done) => {
    port1.onmessage = ({ data }) => {
      told.push(data);
      if (data.id === 2) done();
    };
  });
  const run = { type: "run", changes: { count: 9 }, resolution: "screening" } as const;
  await answers([
    { type: "partner", port: port2, reduces: true },
    { ...given, halves: ["free"] },
    { ...run, id: 2 },
  ]);
  await ofRun;
  port1.close();
  const soil = told.find(({ id }) => id === 2)!.soil!;
  assert(samePlain(reducedSlice(soil.question), soil.slice));
});

Deno.test("a run that is overtaken is given up, and one that makes no sense says why", async () => {
  // Property: the last case asked for is the one answered
  const heard = await answers([
    given,
    { type: "run", id: 1, changes: { leakage: 2 }, resolution: "full" },
    { type: "run", id: 2, changes: { moisture: 0.89 }, resolution: "full" },
  ]);
  const last = heard.at(-1)!;
  assert(last.type === "fault", last.type);
  assertEquals(last.id, 2);
  assert(/pores/.test(last.message), last.message);
  assertEquals(heard.filter((one) => one.type === "result"), []);
});
