/** The page of sliders in a site: the settled year of a study, computed in the reader's browser. @module */
import { join, resolve } from "node:path";
import { InputError } from "../../basics/mod.ts";
import { writeLivePage } from "../../live/build/write_page.ts";
import { defaultStudyPath, openStudy, readResults, startRun, workPool } from "../../study/mod.ts";
import { cannotCompute } from "../compute_study.ts";
import { say } from "../terminal.ts";

/** Folder of the page in a site. */
export const LIVE_FOLDER = "live";

/** The study whose sliders are shown. */
interface LiveFiles {
  readonly path: string;
  readonly climate?: string | undefined;
  readonly columns?: string | undefined;
}

/**
 * Computes a study as far as its page of sliders needs it, and writes the page.
 *
 * @param run folder of a finished run, which keeps its inputs; the demo study without it
 * @param folder of the site
 */
export async function writeLive(
  run: string | undefined,
  folder: string,
  signal: AbortSignal,
): Promise<void> {
  const files = run === undefined ? { path: defaultStudyPath() } : await inputsOf(run);
  const pool = workPool();
  signal.addEventListener("abort", () => pool.close());
  try {
    const study = await openStudy(files.path, files);
    say(`computing ${study.heading.title} for the page of sliders`);
    const started = startRun(study, { pool });
    const [soil, fan, store] = await Promise.all([started.soil(), started.fan(), started.store()])
      .catch((reason) => {
        throw cannotCompute(files.path, reason);
      });
    signal.throwIfAborted();
    await writeLivePage({ soil, fan, store }, study, join(folder, LIVE_FOLDER));
  } finally {
    pool.close();
  }
}

/** The inputs that a run keeps, by the words that give it again in its folder. */
async function inputsOf(run: string): Promise<LiveFiles> {
  const path = join(run, "results.json");
  const { provenance } = readResults(await Deno.readTextFile(path), path);
  const [study, ...words] = provenance.command ?? [];
  if (study === undefined) {
    throw new InputError(
      "Cannot make the page of sliders: this run was written by an earlier version, which kept no " +
        "inputs; run the study again",
      { file: path },
    );
  }
  const kept = (option: string) => {
    const place = words.indexOf(option);
    return place < 0 ? undefined : resolve(run, words[place + 1]!);
  };
  return { path: resolve(run, study), climate: kept("--climate"), columns: kept("--columns") };
}
