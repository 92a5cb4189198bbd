/**
 * Everything a study writes but its notebooks and the report: figures, hourly series, tables,
 * drawings, quantities.
 *
 * @module
 */
import { join, resolve } from "node:path";
import { writeAtomically } from "../press/mod.ts";
import {
  type ResultsFile,
  type StudyRun,
  writeInputs,
  writeResults,
  writeTables,
} from "../study/mod.ts";
import type { StudyNeeds } from "./study_needs.ts";

/** What is written and where. */
export interface OutputsRequest {
  /** results and chapters that were run; only theirs is written */
  readonly needs: StudyNeeds;
  /** true where the field is drawn and its parts are counted; needs soil, tubes and fan */
  readonly drawings: boolean;
  /** folder to write into */
  readonly folder: string;
  /** words that give this run again in its folder, behind `deno task study` */
  readonly command: readonly string[];
}

/** Writes the outputs of a study and gives the content of results.json. */
export async function writeStudyOutputs(
  run: StudyRun,
  { needs, drawings, folder, command }: OutputsRequest,
): Promise<ResultsFile> {
  const results = await writeResults(run, folder, needs.chapters, command);
  await writeInputs(run.study, folder);
  await writeTables(run, folder, needs.results);
  if (needs.results.includes("fittedStudy")) await writeFittedStudy(run, folder);
  if (drawings) await writeDrawings(run, folder);
  return results;
}

/**
 * Writes the study with fitted values beside the results, where a log has told any. It names the files
 * that the study names relative to the study's own folder, so it is run from there. The user's own file
 * is never written over.
 */
async function writeFittedStudy(run: StudyRun, folder: string): Promise<void> {
  const { text, changed, doubt } = await run.fittedStudy();
  if (changed.length === 0) return;
  let name = `${run.study.heading.name}-fitted`;
  while (resolve(folder, `${name}.yaml`) === resolve(run.study.path)) name += "-again";
  await writeAtomically(join(folder, `${name}.yaml`), text);
  if (doubt !== null) await writeAtomically(join(folder, `${name}-doubt.yaml`), doubt);
}

async function writeDrawings(run: StudyRun, folder: string): Promise<void> {
  const { drawingInputs, drawSheets, headerHoles, holesCsv } = await import("../drawings/mod.ts");
  const { quantitiesCsv, quantityTakeOff, takeOffInputs } = await import("../worth/mod.ts");
  const inputs = drawingInputs(run.study, { soil: await run.soil(), tubes: await run.tubes() });
  const drawings = join(folder, "drawings");
  await Deno.mkdir(drawings, { recursive: true });
  for (const paper of ["A4", "A3", "Letter", "Tabloid"] as const) {
    for (const [name, svg] of Object.entries(drawSheets(inputs, paper))) {
      await Deno.writeTextFile(join(drawings, name), svg);
    }
  }
  await Deno.writeTextFile(
    join(drawings, "header-holes.csv"),
    holesCsv(headerHoles(inputs), inputs.units),
  );
  const taken = takeOffInputs(run.study, { tubes: await run.tubes(), fan: await run.fan() });
  const quantities = quantitiesCsv(quantityTakeOff(taken), inputs.units);
  await Deno.writeTextFile(join(folder, "quantities.csv"), quantities);
}
