// deno-lint-ignore-file no-console -- a script that is read on the terminal
/**
 * Takes many random legal studies through the chapters: `run.ts [count] [seed] [first]`. Every fifth
 * with the house's year, every tenth with the store's, the others up to its mesh. The last line is JSON.
 *
 * @module
 */
import { attack, type Depth, writeNamedFiles } from "./attack.ts";
import { CORNERS, legalStudies, type StudyData, studyOf } from "./study.ts";

/** How far the study of a place in the list is taken. */
export function depthOf(index: number): Depth {
  return index % 10 === 0 ? "store" : index % 5 === 0 ? "house" : "site";
}

/** The corners by name and then random studies. */
export function studies(count: number, seed: number): readonly StudyData[] {
  return [...Object.values(CORNERS).map(studyOf), ...legalStudies(count, seed)].slice(0, count);
}

/** What came of many studies. */
export interface Tally {
  /** they ran and all held */
  readonly ran: number;
  /** they were refused before anything was computed */
  readonly refused: number;
  /** neither, each as JSON with the study */
  readonly faults: readonly string[];
}

/**
 * Takes studies through the chapters.
 *
 * @param list of {@link studies}
 * @param first place of the first of them in its list
 * @param say hears of each fault as it comes
 */
export async function takeThrough(
  list: readonly StudyData[],
  first = 0,
  say: (line: string) => void = () => {},
): Promise<Tally> {
  const folder = await Deno.makeTempDir();
  await writeNamedFiles(folder);
  const counts = { ran: 0, refused: 0, fault: 0 };
  const faults: string[] = [];
  for (const [place, data] of list.entries()) {
    const index = first + place;
    const depth = depthOf(index);
    const { kind, lines } = await attack(data, folder, depth);
    counts[kind]++;
    if (kind === "fault") {
      faults.push(JSON.stringify({ index, depth, lines: lines.slice(0, 5), data }));
      say(faults.at(-1)!);
    }
    if ((place + 1) % 10 === 0) {
      say(`${place + 1} of ${list.length}, up to place ${index}: ${JSON.stringify(counts)}`);
    }
  }
  await Deno.remove(folder, { recursive: true });
  return { ran: counts.ran, refused: counts.refused, faults };
}

if (import.meta.main) {
  const [count = 500, seed = 1, first = 0] = Deno.args.map(Number);
  const list = studies(count, seed).slice(first);
  const { ran, refused, faults } = await takeThrough(list, first, (line) => console.error(line));
  const what = "random legal studies through the chapters";
  console.log(
    JSON.stringify({ what, seed, tried: list.length, ran, refused, faults: faults.length }),
  );
  if (faults.length > 0) Deno.exit(1);
}
