// deno-lint-ignore-file no-console -- what readers print is caught
/** Faulty inputs for every reader, many of them, each known by its seed. @module */
import { join } from "node:path";
import process from "node:process";
import { type Base, inputOf, reduced } from "./input.ts";
import { judge, type Verdict } from "./judge.ts";
import type { Reader } from "./readers.ts";

/** An input that a reader neither read nor refused well. */
export interface Finding {
  readonly reader: string;
  readonly seed: number;
  /** what happened */
  readonly words: string;
  /** the file it was made from and what was done to it */
  readonly from: string;
  /** the smallest input found that fails alike */
  readonly input: string;
}

/** What happened to a reader. */
export interface Tally {
  readonly reader: string;
  readonly tried: number;
  readonly seeds: { readonly first: number; readonly last: number };
  readonly read: number;
  readonly refused: number;
  /** refusals that name a line for every fault */
  readonly withLine: number;
  readonly findings: readonly Finding[];
  /** ms of the slowest input, and its seed */
  readonly slowest: { readonly time: number; readonly seed: number };
}

/** Findings of one kind that are reduced and told; the rest is counted. */
const TOLD = 8;

/** Finds the kind of a fault: its words without what comes from the input. */
const kindOf = (words: string) =>
  words.replace(/[0-9]+/g, "#").replace(/".*"/gs, "…").slice(0, 120);

/**
 * Tries a reader with inputs of consecutive seeds.
 *
 * @param seed of the first
 * @param count how many
 */
export async function attackReader(reader: Reader, seed: number, count: number): Promise<Tally> {
  const bases = await reader.bases();
  const folder = await temporaryFolder();
  const path = join(folder, "given");
  const attempt = async (bytes: Uint8Array): Promise<Verdict> => {
    await Deno.writeFile(path, bytes);
    const file = reader.named === false ? "" : folder;
    return await judge(() => silent(() => reader.read(path, folder)), bytes, file);
  };
  let [read, refused, withLine] = [0, 0, 0];
  let slowest = { time: 0, seed };
  const findings: Finding[] = [];
  const kinds = new Set<string>();
  const tried = bases.length === 0 ? 0 : count;
  try {
    for (let one = seed; one < seed + tried; one++) {
      const input = inputOf(one, bases);
      const start = performance.now();
      const verdict = await attempt(input.bytes);
      const time = performance.now() - start;
      if (time > slowest.time) slowest = { time, seed: one };
      if (verdict.kind === "read") read++;
      else if (verdict.kind === "refused") {
        refused++;
        if (verdict.lines) withLine++;
      } else {
        const fresh = !kinds.has(kindOf(verdict.words)) && kinds.size < TOLD;
        kinds.add(kindOf(verdict.words));
        findings.push(await told(reader, { seed: one, bases, verdict, attempt, fresh }));
      }
    }
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
  const seeds = { first: seed, last: seed + tried - 1 };
  return { reader: reader.name, tried, seeds, read, refused, withLine, findings, slowest };
}

/** Runs work that may print nothing: what a reader has to say it throws. */
async function silent(work: () => unknown): Promise<unknown> {
  const { warn, error, log } = console;
  const { emitWarning } = process;
  const printed: string[] = [];
  console.warn = console.error = console.log = (...words) => printed.push(words.join(" "));
  process.emitWarning = (words: string | Error) => printed.push(String(words));
  try {
    const value = await work();
    if (printed.length > 0) throw new Error(`prints ${printed[0]}`);
    return value;
  } finally {
    Object.assign(console, { warn, error, log });
    process.emitWarning = emitWarning;
  }
}

async function told(reader: Reader, { seed, bases, verdict, attempt, fresh }: {
  readonly seed: number;
  readonly bases: readonly Base[];
  readonly verdict: Extract<Verdict, { readonly kind: "fault" }>;
  readonly attempt: (bytes: Uint8Array) => Promise<Verdict>;
  readonly fresh: boolean;
}): Promise<Finding> {
  const input = fresh
    ? await reduced(seed, bases, async (bytes) => {
      const again = await attempt(bytes);
      return again.kind === "fault" && kindOf(again.words) === kindOf(verdict.words);
    })
    : inputOf(seed, bases);
  return {
    reader: reader.name,
    seed,
    words: verdict.words,
    from: `${input.base.name}: ${input.changes.join(", ")}`,
    input: fresh ? shown(input.bytes) : "",
  };
}

function shown(bytes: Uint8Array): string {
  const text = JSON.stringify(new TextDecoder().decode(bytes.subarray(0, 3000)));
  return text.length > 1500 ? `${text.slice(0, 1500)}… (${bytes.length} bytes)` : text;
}

/** A folder, in memory where that can be had. */
async function temporaryFolder(): Promise<string> {
  return await Deno.makeTempDir({ dir: "/dev/shm" }).catch(() => Deno.makeTempDir());
}

/** Findings as text, for a failing test or a report. */
export function findingsText(tallies: readonly Tally[]): string {
  return tallies.flatMap(({ findings }) => findings).filter(({ input }) => input !== "")
    .map(({ reader, seed, words, from, input }) =>
      `${reader}, seed ${seed}: ${words}\n  from ${from}\n  input ${input}`
    ).join("\n");
}
