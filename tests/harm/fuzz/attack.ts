/** The whole attack on the readers, shared out among them. @module */
import { attackReader, type Tally } from "./fuzz.ts";
import { KEPT_READERS } from "./kept_readers.ts";
import { LOG_READERS } from "./log_readers.ts";
import { FILE_READERS, type Reader } from "./readers.ts";

/** Every reader, those of whole years last: they take longest. */
export const READERS: readonly Reader[] = [...KEPT_READERS, ...FILE_READERS, ...LOG_READERS]
  .toSorted((one, other) => Number(one.slow ?? false) - Number(other.slow ?? false));

/** Seeds of one reader lie this far from those of the next. */
const APART = 1_000_000;

/**
 * Tries every reader, or some of them with the inputs that they have in the whole.
 *
 * @param seed of the whole; each reader has its own row of seeds
 * @param count inputs for all readers together
 * @param done told of each reader
 * @param wanted which readers are tried, by their names
 */
export async function attackReaders(
  seed: number,
  count: number,
  done: (tally: Tally) => unknown = () => {},
  wanted: (name: string) => boolean = () => true,
): Promise<readonly Tally[]> {
  const shares = READERS.reduce((sum, { share }) => sum + share, 0);
  const tallies: Tally[] = [];
  for (const [place, reader] of READERS.entries()) {
    if (!wanted(reader.name)) continue;
    const own = Math.max(1, Math.round(count * reader.share / shares));
    const tally = await attackReader(reader, seed + place * APART, own);
    tallies.push(tally);
    await done(tally);
  }
  return tallies;
}
