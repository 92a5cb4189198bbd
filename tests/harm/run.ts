/**
 * Runs attacks whole and writes what happened into docs/reliability.md:
 * `deno run -A tests/harm/run.ts WORDS COUNT SEED`. Ends with status 1 where something was found.
 */
import { join } from "node:path";
import { PROJECT_FOLDER, say } from "winterground/commands/terminal.ts";
import { writeWhole } from "winterground/study/results/write_whole.ts";
import { attackReaders, READERS } from "./fuzz/attack.ts";
import { findingsText } from "./fuzz/fuzz.ts";
import { type AttackRow, reliabilityPage, rowsOfPage, withRows } from "./reliability_page.ts";
import { STAGES, TEST_ATTACKS, testAttack } from "./test_attacks.ts";

const PAGE = join(PROJECT_FOLDER, "docs", "reliability.md");

/** Names of the attacks there are; rows of others are of earlier versions. */
const KNOWN = new Set([
  ...READERS.map(({ name }) => name),
  ...TEST_ATTACKS.map(({ attack }) => attack),
]);

type NewRow = Omit<AttackRow, "when">;

async function readerRows(count: number, seed: number): Promise<NewRow[]> {
  const rows: NewRow[] = [];
  await attackReaders(seed, count, async (tally) => {
    const { reader, tried, read, refused, withLine, findings, slowest, seeds } = tally;
    say(`${reader}: ${tried} tried, ${read} read, ${refused} refused, ${findings.length} found`);
    if (findings.length > 0) say(findingsText([tally]));
    const row = {
      attack: reader,
      tried,
      seeds: tried === 0 ? "" : `${seeds.first} to ${seeds.last}`,
      found: findings.length,
      words: tried === 0
        ? "not tried: its data are not here"
        : `${read} read, ${refused} refused, of these ${withLine} with a line for every fault; ` +
          `slowest ${Math.round(slowest.time)} ms (seed ${slowest.seed})`,
    };
    rows.push(row);
    await writePage([row]);
  }, wanted("broken files") ? undefined : wanted);
  return rows;
}

async function gitWords(...args: string[]): Promise<string> {
  const { stdout } = await new Deno.Command("git", { args, cwd: PROJECT_FOLDER }).output()
    .catch(() => ({ stdout: new Uint8Array(0) }));
  return new TextDecoder().decode(stdout).trim();
}

/** Day and commit. */
async function now(): Promise<string> {
  const commit = await gitWords("rev-parse", "--short=10", "HEAD") || "no commit";
  const changed = await gitWords("status", "--porcelain", "lib", "data") === "" ? "" : "+";
  return `${new Date().toISOString().slice(0, 10)}, ${commit}${changed}`;
}

/** Puts rows into the page as soon as they are known: an attack that is cut off has not been for nothing. */
async function writePage(rows: readonly NewRow[]): Promise<void> {
  const before = rowsOfPage(await Deno.readTextFile(PAGE).catch(() => ""))
    .filter(({ attack }) => KNOWN.has(attack));
  const all = withRows(before, rows.map((row) => ({ ...row, when })));
  const page = reliabilityPage(all, new Set(READERS.map(({ name }) => name)), STAGES);
  await writeWhole(PAGE, page);
}

const [only = "", count = "20000", seed = "1"] = Deno.args;
const wanted = (name: string) => name.includes(only);
const start = performance.now();
const when = await now(); // before anything else is committed
const rows = await readerRows(Number(count), Number(seed));
for (const attack of TEST_ATTACKS) {
  if (!wanted(attack.attack)) continue;
  const row = await testAttack(attack);
  say(`${row.attack}: ${row.words}`);
  rows.push(row);
  await writePage([row]);
}
const found = rows.reduce((sum, row) => sum + row.found, 0);
say(`${found} found in ${((performance.now() - start) / 60_000).toFixed(1)} minutes; see ${PAGE}`);
Deno.exit(found > 0 ? 1 : 0);
