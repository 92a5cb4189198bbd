/**
 * Writing files so that a reader never sees half of one.
 *
 * @module
 */
import { dirname, join } from "node:path";

/** Writes beside the target and renames; on failure nothing is left. */
export async function writeAtomically(path: string, content: string): Promise<void> {
  const beside = join(dirname(path), `.${crypto.randomUUID()}.tmp`);
  try {
    await Deno.writeTextFile(beside, content);
    await Deno.rename(beside, path);
  } catch (error) {
    await Deno.remove(beside).catch(() => {});
    throw error;
  }
}
