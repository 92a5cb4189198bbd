/** Where the numbers of a report come from, as rows of words. @module */
import type { Provenance } from "../study/mod.ts";

/** Rows of the report's provenance; no path of the machine that ran it. */
export function provenanceRows(provenance: Provenance): readonly (readonly [string, string])[] {
  const { library, commit, lockHash, command } = provenance;
  return [
    ["Study, SHA-256", provenance.studyHash],
    ["Weather, SHA-256", provenance.climateHash],
    ["Library", `${library.version}, SHA-256 ${library.hash}`],
    ...(commit ? [["Commit", commit] as const] : []),
    ...(lockHash ? [["Packages (deno.lock), SHA-256", lockHash] as const] : []),
    ["Deno", provenance.deno],
    ["Time of the run", provenance.time],
    ...Object.entries(provenance.files ?? {}).map(([path, hash]) =>
      [`File ${path}, SHA-256`, hash] as const
    ),
    ...(command === undefined
      ? []
      : [["To run it again, in its folder", `deno task study ${command.join(" ")}`] as const]),
  ];
}
