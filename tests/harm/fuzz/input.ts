/** Makes a faulty input from its seed, and the smallest part of it that still fails. @module */
import { BYTE_EDITS } from "./byte_edits.ts";
import { diceOf } from "./dice.ts";
import { TEXT_EDITS } from "./text_edits.ts";

/** A file to start from. */
export interface Base {
  /** where it comes from */
  readonly name: string;
  /** its text; empty where it is none */
  readonly text: string;
  /** its bytes, where it is no text */
  readonly bytes?: Uint8Array<ArrayBuffer>;
}

/** A change and the seed of its choices. */
interface Change {
  readonly name: string;
  readonly seed: number;
}

/** An input. */
export interface Input {
  /** the file it was made from */
  readonly base: Base;
  /** names of the changes */
  readonly changes: readonly string[];
  /** its bytes */
  readonly bytes: Uint8Array<ArrayBuffer>;
}

interface Plan {
  readonly base: Base;
  readonly other: string;
  readonly changes: readonly Change[];
}

function planOf(seed: number, bases: readonly Base[]): Plan {
  const dice = diceOf(seed);
  const change = (name: string): Change => ({ name, seed: dice.whole(0, 0x7fffffff) });
  const base = dice.pick(bases);
  const [texts, bytes] = [Object.keys(TEXT_EDITS), Object.keys(BYTE_EDITS)];
  const count = dice.pick([1, 1, 1, 2, 3]);
  const changes = base.bytes === undefined
    ? Array.from({ length: count }, () => change(dice.pick(texts)))
    : [change(dice.pick(bytes))];
  if (dice.percent(20)) changes.push(change(dice.pick(bytes)));
  return { base, other: dice.pick(bases).text, changes };
}

/** Bytes after some of the changes, in order: those of the text, then those of the bytes. */
function bytesAfter({ base, other, changes }: Plan): Uint8Array<ArrayBuffer> {
  let text = base.text;
  for (const { name, seed } of changes) {
    text = TEXT_EDITS[name]?.(text, diceOf(seed), other) ?? text;
  }
  let bytes = base.bytes ?? new TextEncoder().encode(text);
  for (const { name, seed } of changes) bytes = BYTE_EDITS[name]?.(bytes, diceOf(seed)) ?? bytes;
  return bytes;
}

/** The input of a seed. */
export function inputOf(seed: number, bases: readonly Base[]): Input {
  const plan = planOf(seed, bases);
  return {
    base: plan.base,
    changes: plan.changes.map(({ name }) => name),
    bytes: bytesAfter(plan),
  };
}

/** Most trials for one reduction. */
const TRIALS = 200;

/**
 * A smaller input that fails alike: first with fewer changes, then with fewer lines.
 *
 * @param fails true where the bytes still fail alike
 */
export async function reduced(
  seed: number,
  bases: readonly Base[],
  fails: (bytes: Uint8Array<ArrayBuffer>) => Promise<boolean>,
): Promise<Input> {
  let plan = planOf(seed, bases);
  for (const change of plan.changes) {
    const fewer = { ...plan, changes: plan.changes.filter((one) => one !== change) };
    if (await fails(bytesAfter(fewer))) plan = fewer;
  }
  const bytes = await fewerLines(bytesAfter(plan), fails);
  return { base: plan.base, changes: plan.changes.map(({ name }) => name), bytes };
}

async function fewerLines(
  bytes: Uint8Array<ArrayBuffer>,
  fails: (bytes: Uint8Array<ArrayBuffer>) => Promise<boolean>,
): Promise<Uint8Array<ArrayBuffer>> {
  let lines = linesOf(bytes);
  let trials = 0;
  for (let piece = Math.ceil(lines.length / 2); piece >= 1; piece = Math.floor(piece / 2)) {
    for (let from = 0; from < lines.length && trials < TRIALS; trials++) {
      const fewer = lines.toSpliced(from, piece);
      if (await fails(bytesOf(fewer))) lines = fewer;
      else from += piece;
    }
  }
  return bytesOf(lines);
}

/** Lines with their ends, as one character a byte. */
function linesOf(bytes: Uint8Array): string[] {
  const letters: string[] = [];
  for (let at = 0; at < bytes.length; at += 8192) {
    letters.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  }
  return letters.join("").split(/(?<=\n)/);
}

function bytesOf(lines: readonly string[]): Uint8Array<ArrayBuffer> {
  return Uint8Array.from(lines.join(""), (letter) => letter.charCodeAt(0));
}
