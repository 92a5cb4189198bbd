/**
 * How good is what the search of designs finds? Runs it on the demo study, then as many designs drawn
 * at random within the same limits, half from the same choices and half between them, through the same
 * settled year:
 *
 *   deno run -A tests/bench/random_designs.ts [DRAWN] [YEARS OF THE SEARCH] [SEED]
 *
 * @module
 */
import { shared } from "../../lib/basics/mod.ts";
import { say } from "../../lib/commands/terminal.ts";
import { defaultStudyPath, openStudy, startRun, workPool } from "../../lib/study/mod.ts";
import { ALL_KEYS, ownChoice } from "../../lib/worth/designs/choices.ts";
import { type BuiltDesign, designJudge } from "../../lib/worth/designs/judge.ts";
import { designRows } from "../../lib/worth/designs/rows.ts";
import { designSteps } from "../../lib/worth/designs/search.ts";
import type { DesignRow } from "../../lib/worth/designs/types.ts";
import { settledDesigns } from "../../lib/worth/designs/years.ts";
import { worth } from "../../lib/worth/mod.ts";
import { drawnDesigns } from "../worth/designs/demo.ts";

const [drawn = 100, years = 80, seed = 7] = Deno.args.map(Number);
const pool = workPool();
const print = (what: string, value: string | number) => say(`${what.padEnd(60)} ${value}`);
const seconds = (start: number) => ((performance.now() - start) / 1000).toFixed(0);

try {
  const study = await openStudy(defaultStudyPath());
  const run = startRun(study, { pool });
  const question = worth.extras.designs.takes(
    { ...study, worth: { ...study.worth, search: true, searchRuns: years } },
    await run.results(),
  );
  const begin = performance.now();
  const search = await shared(designSteps(question), (piece) => pool.do(piece));
  if (search === null) throw new Error("the demo has no prices");
  print(`search: ${search.judged} judged, ${search.runs} years, s`, seconds(begin));
  const within = search.rows.filter(({ breaks }) => breaks === null);

  const start = performance.now();
  const designs = [
    designJudge(question)(ownChoice(question)) as BuiltDesign,
    ...drawnDesigns(question, Math.ceil(drawn / 2), ALL_KEYS, "axes", seed),
    ...drawnDesigns(question, Math.floor(drawn / 2), ALL_KEYS, "between", seed),
  ];
  print(`${drawn} designs drawn within the limits, s`, seconds(start));
  const runs = await shared(settledDesigns(question.request)(designs), (piece) => pool.do(piece));
  print("their years, s", seconds(start));
  const rows = designRows(designs.map((design, k) => ({ design, run: runs[k]! })), question)
    .filter(({ breaks, own }) => breaks === null && !own);

  const above = (gain: (row: DesignRow) => number, resolution: number) =>
    rows.filter((row) =>
      !within.some((other) => other.capital <= row.capital && gain(other) >= gain(row) - resolution)
    ).length;
  const greatest = (all: readonly DesignRow[], value: (row: DesignRow) => number) =>
    all.reduce((best, row) => Math.max(best, value(row)), -Infinity).toFixed(3);
  const cheapest = (row: DesignRow) =>
    row.saved > search.savedResolution ? -(row.costOfHeat ?? Infinity) : -Infinity;
  print("greatest net savings: search", greatest(within, (row) => row.netSavings));
  print("greatest net savings: drawn", greatest(rows, (row) => row.netSavings));
  print("least cost of a kWh saved: search", greatest(within, cheapest));
  print("least cost of a kWh saved: drawn", greatest(rows, cheapest));
  const { savedResolution, hoursResolution } = search;
  print("kWh, h that the mesh leaves open", `${savedResolution}, ${hoursResolution}`);
  for (const row of rows) {
    const below = within.filter(({ capital }) => capital <= row.capital);
    const most = below.reduce((best, { saved }) => Math.max(best, saved), 0);
    if (row.saved <= most + savedResolution) continue;
    const { count, length, layers, tube } = row.choice;
    print(
      `above: ${count} × ${length} m ${tube}, ${layers} layers, ${row.capital.toFixed(0)}`,
      `${(row.saved - most).toFixed(1)} kWh more`,
    );
  }
  print("drawn designs above the stairs of cost and heat", above((row) => row.saved, 0));
  print("… by more than that", above((row) => row.saved, savedResolution));
  print("… of cost and hours", above((row) => row.cropHoursAvoided, hoursResolution));
} finally {
  pool.close();
}
