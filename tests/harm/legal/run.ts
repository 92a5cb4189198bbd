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

if (import.meta.main) {
  const [count = 500, seed = 1, first = 0] = Deno.args.map(Number);
  const folder = await Deno.makeTempDir();
  await writeNamedFiles(folder);
  const counts = { ran: 0, refused: 0, fault: 0 };
  const list = studies(count, seed).slice(first);
  for (const [place, data] of list.entries()) {
    const index = first + place;
    const { kind, lines } = await attack(
      data,
      folder,
      depthOf(index),
    );
    counts[kind]++;
    if (kind === "fault") {
      console.error(
        JSON.stringify({ index, depth: depthOf(index), lines: lines.slice(0, 5), data }),
      );
    }
  }
  await Deno.remove(folder, { recursive: true });
  const { ran, refused, fault: faults } = counts;
  const what = "random legal studies through the chapters";
  console.log(JSON.stringify({ what, seed, tried: list.length, ran, refused, faults }));
  if (faults > 0) Deno.exit(1);
}
