/** The words of a site's first page and foot: what the project is, and where the numbers come from. @module */
import { join } from "node:path";
import { InputError } from "../../basics/mod.ts";
import { readResults } from "../../study/mod.ts";
import { PROJECT_FOLDER } from "../terminal.ts";

/** Title and first paragraph of the README, as plain words. */
export async function introduction(): Promise<{
  readonly name: string;
  readonly words: readonly string[];
}> {
  const text = await Deno.readTextFile(join(PROJECT_FOLDER, "README.md"));
  const [head = "", first = ""] = text.split(/\n\n+/);
  const words = first.replaceAll(/\*\*|`/g, "").replaceAll(/\s+/g, " ").trim();
  return { name: head.replace(/^#\s*/, "").trim(), words: [words] };
}

/**
 * Which run the outputs are of, in words.
 *
 * @param run folder of a finished run; the project's own notebooks without it
 * @throws {InputError} where the folder holds no results
 */
export async function originOf(run: string | undefined): Promise<string> {
  if (run === undefined) return "Outputs: the demo study, as the project's notebooks hold them.";
  const path = join(run, "results.json");
  const text = await Deno.readTextFile(path).catch(() => {
    throw new InputError("Cannot find the results of a finished run", { file: path });
  });
  const { study, provenance } = readResults(text, path);
  return `Outputs: ${study.title}, run of ${provenance.time}, study ${
    provenance.studyHash.slice(0, 12)
  }, library ${provenance.library.hash.slice(0, 12)}.`;
}
