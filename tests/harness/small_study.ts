/** A study that computes quickly, for tests of the run as a whole. @module */
import { openStudy, type Study } from "winterground/study/mod.ts";

const TEXT = `
place: {name: Testfield, latitude: 49 deg, longitude: -100 deg, elevation: 500 m, timeZone: UTC-6}
climate: {normals: normals.csv}
house: {length: 12 m, width: 6 m, curtain: {coverage: 80 %}}
tubes: {count: 6, layers: 1, airFlow: 250 cfm}
fan: {fan: duct-315, count: 1, speed: 0.4}
store: {slices: 1, spinUpYears: 0, outsideSoil: 1 m, meshDepth: 3 m}
worth: {winters: 0}
`;

/** The small study with walls and edges that need no board: half as many measures are run for its worth. */
export function wellBuilt(text: string): string {
  return text.replace(
    "curtain:",
    "northWall: 0.3 W/(m2 K), northRoof: 0.3 W/(m2 K), edgeInsulation: 2 m2 K/W, " +
      "edgeInsulationDepth: 0.6 m, glazing: triple-wall-16mm, curtain:",
  );
}

/** Writes the small study and its normals into a folder; gives the path of the study file. */
export async function writeSmallStudy(
  folder: string,
  change: (text: string) => string = (text) => text,
): Promise<string> {
  await Deno.copyFile(
    new URL("../../data/climates/aldersett_normals.csv", import.meta.url),
    `${folder}/normals.csv`,
  );
  await Deno.writeTextFile(`${folder}/small.yaml`, change(TEXT));
  return `${folder}/small.yaml`;
}

/** Opens the small study, changed where asked, with the demo place's normals. */
export async function openSmallStudy(
  change: (text: string) => string = (text) => text,
): Promise<Study> {
  const folder = await Deno.makeTempDir();
  try {
    return await openStudy(await writeSmallStudy(folder, change));
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** A sweep of the small study whose rows take some tenths of a second each. */
export const SMALL_SWEEP = `chapters: [tubes, fan]
keys:
  tubes.length: [7 m, 8 m, 9 m]
  tubes.tube: [corrugated-4in, corrugated-3in]
  soil.moisture: {from: 15 %, to: 35 %, steps: 2}
`;
/** Count of its rows. */
export const SMALL_SWEEP_ROWS = 12;
