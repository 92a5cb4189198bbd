/** Takes one legal study through the chapters and says what came of it. @module */
import { InputError, InputErrors } from "winterground/basics/mod.ts";
import { drawingInputs, drawSheets, headerHoles, holesCsv } from "winterground/drawings/mod.ts";
import { ownSite } from "winterground/store/seasons/soil_model.ts";
import { storeRequest } from "winterground/store/takes.ts";
import { COMPUTATIONS } from "winterground/study/chapters.ts";
import { openStudyText, startRun, type Study, type StudyRun } from "winterground/study/mod.ts";
import { hourlyCsv } from "winterground/study/results/hourly.ts";
import { resultTables } from "winterground/study/results/tables.ts";
import { quantitiesCsv, quantityTakeOff, takeOffInputs } from "winterground/worth/mod.ts";
import {
  designFaults,
  figureFaults,
  hourFaults,
  houseFaults,
  storeFaults,
  tableFaults,
  textFaults,
} from "./sound.ts";
import { type StudyData, studyText } from "./study.ts";

/** How far a study is taken: to fan and drawings, with the store's mesh, the house's year, the store's. */
export type Depth = "fan" | "site" | "house" | "store";

/** What came of a study. */
export interface Outcome {
  /** it ran and all held; it was refused before anything was computed; or neither */
  readonly kind: "ran" | "refused" | "fault";
  /** what was refused, or what does not hold; empty where it ran */
  readonly lines: readonly string[];
}

/** Without a value by intent: the lowest layer has no bottom, a resting fan no air. */
const WITHOUT_VALUE = [
  /^soil\.summary\.layers\.\d+\.bottom$/,
  /^store\.year\.(intake|outlet)Temperature$/,
];

/** Writes what studies name into a folder: normals and prices. */
export async function writeNamedFiles(folder: string): Promise<void> {
  const data = new URL("../../../data/", import.meta.url);
  await Deno.copyFile(
    new URL("climates/aldersett_normals.csv", data),
    `${folder}/normals.csv`,
  );
  await Deno.copyFile(new URL("prices/harrow-bend.csv", data), `${folder}/prices.csv`);
}

/**
 * Runs a study on its own, nothing kept.
 *
 * @param data content of the study file
 * @param folder where the files lie that it names
 * @param depth how far it is taken
 */
export async function attack(data: StudyData, folder: string, depth: Depth): Promise<Outcome> {
  let study: Study;
  try {
    study = await openStudyText(studyText(data), `${folder}/legal.yaml`);
  } catch (error) {
    return refusal(error);
  }
  try {
    const lines = await contradictions(study, depth);
    return { kind: lines.length === 0 ? "ran" : "fault", lines };
  } catch (error) {
    const { name, message, stack } = error as Error;
    const where = /lib\/\S+/.exec(stack ?? "")?.[0] ?? "";
    return { kind: "fault", lines: [`${name}: ${message} (${where})`] };
  }
}

/** A refusal is sound where each of its faults names file and line. */
function refusal(error: unknown): Outcome {
  if (!(error instanceof InputError)) {
    return { kind: "fault", lines: [`refused with ${(error as Error).stack ?? String(error)}`] };
  }
  const faults = error instanceof InputErrors ? error.faults : [error];
  const nowhere = faults.filter(({ location }) => location?.line === undefined);
  return nowhere.length > 0
    ? { kind: "fault", lines: nowhere.map(({ message }) => `refused without a line: ${message}`) }
    : { kind: "refused", lines: faults.map(({ message }) => message) };
}

async function contradictions(study: Study, depth: Depth): Promise<readonly string[]> {
  const run = startRun(study, { cacheFolder: null, computations: cheap() });
  const climate = await run.climate();
  const soil = await run.soil();
  const tubes = await run.tubes();
  const headers = await run.headers();
  const fan = await run.fan();
  const lines = [
    ...hourFaults("climate", climate, WITHOUT_VALUE),
    ...hourFaults("soil", soil, WITHOUT_VALUE),
    ...hourFaults("tubes", tubes, WITHOUT_VALUE),
    ...hourFaults("headers", headers, WITHOUT_VALUE),
    ...hourFaults("fan", fan, WITHOUT_VALUE),
    ...designFaults({ soil, tubes, headers, fan }),
    ...figureFaults(await run.figures("climate", "soil", "tubes", "headers", "fan")),
    ...tableFaults(await resultTables(run, ["climate", "soil", "tubes", "headers", "fan"])),
    ...await drawingFaults(run),
  ];
  if (depth === "fan") return lines;
  const site = ownSite(storeRequest(study, { soil, tubes, headers, fan }));
  lines.push(...hourFaults("site", site, []));
  if (depth === "site") return lines;
  const house = await run.house();
  lines.push(
    ...hourFaults("house", house, WITHOUT_VALUE),
    ...houseFaults({ house }),
    ...figureFaults(await run.figures("house")),
    ...tableFaults(await resultTables(run, ["house"])),
  );
  if (depth === "house") return lines;
  const store = await run.store();
  lines.push(
    ...hourFaults("store", store, WITHOUT_VALUE),
    ...storeFaults({ store }),
    ...figureFaults(await run.figures()),
    ...tableFaults(await resultTables(run, ["store", "worth"])),
    ...textFaults("hourly.csv", hourlyCsv(study, { soil, house, store })),
  );
  return [...lines, ...noticeFaults(await run.notices())];
}

function noticeFaults(notices: readonly { readonly text: string }[]): readonly string[] {
  return notices.flatMap(({ text }) => textFaults("notice", text));
}

async function drawingFaults(run: StudyRun): Promise<readonly string[]> {
  const [soil, tubes, fan] = [await run.soil(), await run.tubes(), await run.fan()];
  const inputs = drawingInputs(run.study, { soil, tubes });
  const taken = takeOffInputs(run.study, { tubes, fan });
  return [
    ...Object.entries(drawSheets(inputs, "A4")).flatMap(([name, svg]) => textFaults(name, svg)),
    ...textFaults("header-holes.csv", holesCsv(headerHoles(inputs))),
    ...textFaults("quantities.csv", quantitiesCsv(quantityTakeOff(taken))),
  ];
}

/** The chapters without the ranking of measures, which settles a dozen years. */
export function cheap(): typeof COMPUTATIONS {
  const none = { after: [], takes: () => null, compute: () => [] };
  return new Map([...COMPUTATIONS, ["ranking", none]]);
}
