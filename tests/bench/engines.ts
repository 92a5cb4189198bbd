/**
 * Holds the fast engine against the full one through a winter, case by case: `engines.ts [words]` runs
 * the cases whose name has all the words, `--slices=8` on so many slices. Two cases run side by side.
 * Every row is kept in out/engines.jsonl as it is done; a run that was cut off goes on after it.
 */
import { dirname } from "node:path";
import { say } from "../../lib/commands/terminal.ts";
import { allCases, caseName, type EngineCase, type EngineRow, runCase } from "./engine_cases.ts";

const KEPT = new URL("../../out/engines.jsonl", import.meta.url).pathname;
const SLICES = 2;
const SIDE_BY_SIDE = 2;
const WORKER = "--case=";
/** K and shares that a case may be apart. */
const ALLOWED = { rms: 0.05, share: 0.005 };

/** Rows kept so far, the last of each case. */
async function keptRows(): Promise<Map<string, EngineRow>> {
  const text = await Deno.readTextFile(KEPT).catch((error) => {
    if (error instanceof Deno.errors.NotFound) return "";
    throw error;
  });
  // a run cut off while writing leaves half a line: it goes, and its case is run again
  const whole = text.slice(0, text.lastIndexOf("\n") + 1);
  if (whole !== text) await Deno.writeTextFile(KEPT, whole);
  const rows = whole.split("\n").slice(0, -1).map((line) => JSON.parse(line) as EngineRow);
  return new Map(rows.map((row) => [caseName(row), row]));
}

/** Runs cases one after another, each in a process of its own, and keeps their rows. */
async function runQueue(queue: EngineCase[]): Promise<void> {
  for (let next = queue.shift(); next !== undefined; next = queue.shift()) {
    const left = queue.length;
    const { code, stdout, stderr } = await new Deno.Command(Deno.execPath(), {
      args: ["run", "-A", "--no-check", import.meta.filename!, WORKER + JSON.stringify(next)],
      stdin: "null",
    }).output();
    if (code !== 0) throw new Error(`${caseName(next)}: ${new TextDecoder().decode(stderr)}`);
    const row = new TextDecoder().decode(stdout).trim();
    await Deno.writeTextFile(KEPT, row + "\n", { append: true });
    say(`${caseName(next)}: done, ${left} wait`);
  }
}

const percent = (share: number | null) =>
  share === null || Number.isNaN(share) ? "" : `${(100 * share).toFixed(2)} %`;

function inside({ rms, heatIn, heatOut, backUp }: EngineRow): boolean {
  return rms <= ALLOWED.rms &&
    [heatIn, heatOut, backUp ?? 0].every((share) => !(Math.abs(share) > ALLOWED.share));
}

function table(rows: readonly EngineRow[]): string {
  return [
    "| case | RMS, p95 | coldest, fast / full | heat in | heat out | back-up heat | CPU s, fast / full | inside |",
    "| --- | --- | --- | --- | --- | --- | --- | --- |",
    ...rows.map((row) =>
      `| ${caseName(row)} | ${row.rms.toFixed(3)} K, ${row.p95.toFixed(3)} K | ${
        row.heated ? "" : row.coldest.map((value) => `${value.toFixed(2)} °C`).join(" / ")
      } | ${percent(row.heatIn)} | ${percent(row.heatOut)} | ${percent(row.backUp)} | ${
        row.seconds.map((value) => value.toFixed(0)).join(" / ")
      } | ${inside(row) ? "yes" : "no"} |`
    ),
  ].join("\n");
}

const own = Deno.args.find((arg) => arg.startsWith(WORKER));
if (own !== undefined) {
  const row = await runCase(JSON.parse(own.slice(WORKER.length)), Deno.env.get("OPEN_DATA"));
  await Deno.stdout.write(new TextEncoder().encode(JSON.stringify(row)));
  Deno.exit(0);
}

const slices = Number(Deno.args.find((arg) => arg.startsWith("--slices="))?.slice(9) ?? SLICES);
const words = Deno.args.filter((arg) => !arg.startsWith("--"));
const wanted = allCases(slices).filter((one) =>
  words.every((word) => caseName(one).includes(word))
);
await Deno.mkdir(dirname(KEPT), { recursive: true });
const before = await keptRows();
const queue = wanted.filter((one) => !before.has(caseName(one)));
say(`${wanted.length} cases, ${queue.length} to run`);
await Promise.all(Array.from({ length: SIDE_BY_SIDE }, () => runQueue(queue)));
const after = await keptRows();
const rows = wanted.map((one) => after.get(caseName(one))!);
say(table(rows));
Deno.exit(rows.every(inside) ? 0 : 1);
