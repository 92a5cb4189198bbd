/**
 * Everything a study writes but its notebooks and the report: figures, hourly series, tables,
 * drawings, quantities.
 *
 * @module
 */
import { join } from "node:path";
import { drawingInputs, drawSheets, headerHoles, holesCsv } from "../drawings/mod.ts";
import {
  openStudy,
  type ResultsFile,
  resultsOf,
  startRun,
  type StudyRun,
  writeResults,
  writeTables,
} from "../study/mod.ts";
import { quantitiesCsv, quantityTakeOff, takeOffInputs } from "../worth/mod.ts";

/** Which study, and where its outputs go. */
export interface OutputsRequest {
  /** study file */
  readonly path: string;
  /** climate file that replaces the one of the study */
  readonly climate?: string | undefined;
  /** columns file for it */
  readonly columns?: string | undefined;
  /** folder to write into */
  readonly folder: string;
}

/** Computes the study, writes its outputs and gives the content of results.json. */
export async function writeStudyOutputs(request: OutputsRequest): Promise<ResultsFile> {
  const { path, climate, columns, folder } = request;
  const run = startRun(await openStudy(path, { climate, columns }));
  await writeResults(run, folder);
  await writeTables(run, folder);
  await writeDrawings(run, folder);
  return await resultsOf(run);
}

async function writeDrawings(run: StudyRun, folder: string): Promise<void> {
  const inputs = drawingInputs(run.study, { soil: await run.soil(), tubes: await run.tubes() });
  const drawings = join(folder, "drawings");
  await Deno.mkdir(drawings, { recursive: true });
  for (const paper of ["A4", "A3", "Letter", "Tabloid"] as const) {
    for (const [name, svg] of Object.entries(drawSheets(inputs, paper))) {
      await Deno.writeTextFile(join(drawings, name), svg);
    }
  }
  await Deno.writeTextFile(join(drawings, "header-holes.csv"), holesCsv(headerHoles(inputs)));
  const taken = takeOffInputs(run.study, { tubes: await run.tubes(), fan: await run.fan() });
  const quantities = quantitiesCsv(quantityTakeOff(taken));
  await Deno.writeTextFile(join(folder, "quantities.csv"), quantities);
}
