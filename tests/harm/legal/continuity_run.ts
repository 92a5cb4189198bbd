// deno-lint-ignore-file no-console -- a script that is read on the terminal
/**
 * Changes every number of a study by a millionth: `continuity_run.ts [fan|house|store] [every]`. Prints
 * what moves a figure by more than its share, and the largest moves; the last line is JSON.
 *
 * @module
 */
import { type Depth, writeNamedFiles } from "./attack.ts";
import { MOST, type Move, movesOf, studyNumbers } from "./continuity.ts";

if (import.meta.main) {
  const [depth = "fan", every = "1"] = Deno.args as [Depth?, string?];
  const folder = await Deno.makeTempDir();
  await writeNamedFiles(folder);
  const numbers = (await studyNumbers(folder)).filter((_, place) => place % Number(every) === 0);
  const largest: Move[] = [];
  let faults = 0;
  for await (const moved of movesOf(numbers, depth, folder)) {
    const over = moved.filter(({ share }) => share > MOST);
    faults += over.length;
    for (const one of over) console.error(JSON.stringify(one));
    if (moved[0] !== undefined) largest.push(moved[0]);
  }
  await Deno.remove(folder, { recursive: true });
  largest.sort((one, two) => two.share - one.share);
  for (const { key, figure, share } of largest.slice(0, 10)) {
    console.log(`${key} moves ${figure} by ${share.toExponential(1)}`);
  }
  const what = `a millionth in every number, up to the ${depth}`;
  console.log(JSON.stringify({ what, tried: numbers.length, most: MOST, faults }));
  if (faults > 0) Deno.exit(1);
}
