import { assert, assertAlmostEquals, assertEquals } from "@std/assert";
import { openStudy } from "winterground/study/mod.ts";
import { readSweep, runRows } from "winterground/study/sweep/mod.ts";
import { NO_CACHE } from "../../../lib/study/run/cache.ts";
import { ownChoice } from "../../../lib/worth/designs/choices.ts";
import { type BuiltDesign, designJudge } from "../../../lib/worth/designs/judge.ts";
import { demoQuestion } from "../../worth/designs/demo.ts";

const path = decodeURIComponent(
  new URL("../../../data/studies/demo/harrow-bend.yaml", import.meta.url).pathname,
);

Deno.test("a field costs as much in a sweep as in the search of designs", async () => {
  // Property: headers, tubes and fans of a row are priced by the same rule, own headers by the list
  const own = ownChoice(demoQuestion);
  const judge = designJudge(demoQuestion);
  const study = await openStudy(path);
  const wanted = [own, { ...own, header: 0.35, length: 18 }].map((choice) => {
    const built = judge(choice) as BuiltDesign;
    assert(typeof built !== "string", String(built));
    return { choice, built, money: built.money({ ...demoQuestion.own }) };
  });
  const list = (value: (one: typeof wanted[number]) => string | number) =>
    `[${wanted.map(value).join(", ")}]`;
  const plan = readSweep(
    `form: zip
chapters: [tubes, headers, fan, store, worth]
keys:
  tubes.count: ${list(({ choice }) => choice.count)}
  tubes.length: ${list(({ choice }) => `${choice.length} m`)}
  headers.diameter: ${list(({ choice }) => `${choice.header} m`)}
  headers.returnDiameter: ${list(({ built }) => `${built.headers.returnDiameter} m`)}
  headers.groups: ${list(({ built }) => built.headers.groups)}
  fan.speed: ${list(({ built }) => built.speed)}
  store.slices: ${list(() => 1)}
  store.spinUpYears: ${list(() => 0)}
`,
    "headers.yaml",
  );
  const text = await Deno.readTextFile(path);
  const costs = new Map<number, number>();
  await runRows({ plan, text, path, pieces: NO_CACHE }, [1, 2], ({ row, figures, fault }) => {
    assertEquals(fault, "");
    costs.set(row, figures!["worth.capital"]!.value as number);
  });
  assertEquals(study.headers.diameter, own.header);
  wanted.forEach(({ money }, k) => assertAlmostEquals(costs.get(k + 1)!, money!.capital, 1e-6));
});
