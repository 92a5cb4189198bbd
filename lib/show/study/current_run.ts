/** The run a notebook belongs to. @module */
import { readIn } from "../kit/reader.ts";
import { defaultStudyPath, openStudy, startRun, type StudyRun, workPool } from "../../study/mod.ts";

let current: Promise<StudyRun> | undefined;

/**
 * The run of the study named by the environment, the same for every cell:
 * `WINTERGROUND_STUDY` (path of a study file; the demo study without it), `WINTERGROUND_CLIMATE`
 * and `WINTERGROUND_COLUMNS` (files that take the place of those the study names). Where
 * `WINTERGROUND_FIGURES` is `all`, as in a whole study, figures wait for the extras that give some.
 */
export function currentRun(): Promise<StudyRun> {
  return current ??= openFromEnvironment();
}

async function openFromEnvironment(): Promise<StudyRun> {
  const climate = Deno.env.get("WINTERGROUND_CLIMATE");
  const columns = Deno.env.get("WINTERGROUND_COLUMNS");
  const study = await openStudy(Deno.env.get("WINTERGROUND_STUDY") ?? defaultStudyPath(), {
    ...(climate === undefined ? {} : { climate }),
    ...(columns === undefined ? {} : { columns }),
  });
  readIn(study.heading.units);
  const figuresOfExtras = Deno.env.get("WINTERGROUND_FIGURES") === "all";
  return startRun(study, { pool: workPool(), figuresOfExtras });
}
