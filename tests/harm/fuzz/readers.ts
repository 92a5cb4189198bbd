/** Every reader of files that a person or a run leaves, with sound files to start from. @module */
import { join } from "node:path";
import { readFans } from "winterground/fan/mod.ts";
import { readNormals, yearFromNormals } from "winterground/climate/mod.ts";
import { readGreenhouseLog } from "winterground/measured/mod.ts";
import { formatNotebook, parseNotebook, renderWorkbook } from "winterground/press/mod.ts";
import { loadClimateFile } from "winterground/study/file/climate_source.ts";
import { defaultStudyPath } from "winterground/study/file/check_study.ts";
import { openStudy } from "winterground/study/file/open.ts";
import { readTextFile } from "winterground/study/file/read_text.ts";
import {
  findManifest,
  headLine,
  readRows,
  readSweep,
  rowValues,
  tableColumns,
} from "winterground/study/sweep/mod.ts";
import { readPriceList } from "winterground/worth/mod.ts";
import { PLAIN_COLUMNS, plainYear } from "../../harness/climate_files.ts";
import { SWEEPS } from "./sweep_bases.ts";
import type { Base } from "./input.ts";

/** A reader under attack. */
export interface Reader {
  /** what it reads */
  readonly name: string;
  /** of a hundred inputs, so many are for it */
  readonly share: number;
  /** sound files; none where the data are not there */
  readonly bases: () => Promise<readonly Base[]>;
  /** reads the file; what it gives is searched for numbers that are none */
  readonly read: (path: string, folder: string) => unknown;
  /** true where an input takes a tenth of a second and more */
  readonly slow?: boolean;
  /** false where it reads no file, so that refusals name none */
  readonly named?: boolean;
}

const PROJECT = new URL("../../../", import.meta.url).pathname;
const DATA = join(PROJECT, "data");
const OPEN_DATA = Deno.env.get("OPEN_DATA");
const PLACE = { name: "x", latitude: 49, longitude: -100, elevation: 500, timeZone: -6 };
const MADE = { study: "a1", sweep: "b2", library: "c3" };
const PLAN = readSweep(SWEEPS[0]!, "sweep.yaml");
const FIGURES = [
  { key: "fan.power", unit: "W", label: "power of the fan", unchanged: 31.5 },
  { key: "worth.verdict", unit: "text", label: "verdict", unchanged: "dig" },
];
const COLUMNS = tableColumns(PLAN.keys, FIGURES);

const base = async (path: string, lines?: number): Promise<Base> => {
  const text = await Deno.readTextFile(path);
  return { name: path, text: lines === undefined ? text : text.split("\n", lines).join("\n") };
};
const made = (name: string, text: string): Base => ({ name, text });

async function openFiles(folder: string, lines?: number): Promise<readonly Base[]> {
  if (OPEN_DATA === undefined) return [];
  const names = await Array.fromAsync(Deno.readDir(join(OPEN_DATA, folder)));
  const sorted = names.map(({ name }) => name).filter((name) => name.endsWith(".csv")).sort();
  return await Promise.all(sorted.map((name) => base(join(OPEN_DATA, folder, name), lines)));
}

/** The demo study, its files named by whole paths. */
async function demoStudy(): Promise<string> {
  return (await Deno.readTextFile(defaultStudyPath()))
    .replaceAll("../../climates", join(DATA, "climates"))
    .replaceAll("../../prices", join(DATA, "prices"))
    .replaceAll("../../logs", join(DATA, "logs"));
}

const SMALL_STUDY = `study: {name: small}
place: {name: Testfield, latitude: 49 deg, longitude: -100 deg, elevation: 500 m, timeZone: UTC-6,
  horizon: [{azimuth: 150 deg, elevation: 10 deg}, {azimuth: 200 deg, elevation: 5 deg}]}
climate: {normals: ${join(DATA, "climates/aldersett_normals.csv")}}
soil: {layers: [{thickness: 0.3 m, texture: silt}, {thickness: 1 m, texture: sand}]}
house: {length: 12 m, width: 6 m, curtain: {coverage: 80 %, clock: "16:00 to 9:00"}, leafArea: {jan: 1, jul: 3}}
tubes: {count: 6, layers: 1, airFlow: 250 cfm}
fan: {fan: duct-315, count: 1, speed: 0.4}
store: {slices: 1, spinUpYears: 0, outsideSoil: 1 m, fanSeason: 15 Aug to 30 Apr,
  collector: {place: outside, area: 4 m2}, gravelBed: {margin: 0.15 m}}
worth: {winters: 0}
`;

/** All of them. */
export const FILE_READERS: readonly Reader[] = [
  {
    name: "climate file",
    share: 4,
    slow: true,
    bases: async () => {
      const files = await openFiles("climate");
      return files.length > 0 ? files : [made("plain year", plainYear().join("\n"))];
    },
    read: async (path, folder) => {
      if (OPEN_DATA !== undefined) return (await loadClimateFile(path, undefined)).year;
      await Deno.writeTextFile(join(folder, "columns.yaml"), PLAIN_COLUMNS);
      return (await loadClimateFile(path, join(folder, "columns.yaml"))).year;
    },
  },
  {
    name: "table with a columns file",
    share: 3,
    slow: true,
    bases: () => Promise.resolve([made("plain year", plainYear().join("\n"))]),
    read: async (path, folder) => {
      await Deno.writeTextFile(join(folder, "columns.yaml"), PLAIN_COLUMNS);
      return (await loadClimateFile(path, join(folder, "columns.yaml"))).year;
    },
  },
  {
    name: "columns file",
    share: 9,
    bases: () => Promise.resolve([made("plain columns", PLAIN_COLUMNS)]),
    read: async (path, folder) => {
      const table = join(folder, "year.csv");
      if (await Deno.stat(table).catch(() => null) === null) {
        await Deno.writeTextFile(table, plainYear().join("\n"));
      }
      return (await loadClimateFile(table, path)).year;
    },
  },
  {
    name: "monthly normals",
    share: 9,
    bases: async () => [await base(join(DATA, "climates/aldersett_normals.csv"))],
    read: async (path) => {
      const normals = readNormals(await readTextFile(path, "normals file", "table"), path);
      return [normals, yearFromNormals(normals, PLACE, 3)];
    },
  },
  {
    name: "study file",
    share: 20,
    slow: true,
    bases: async () => [made("demo study", await demoStudy()), made("small study", SMALL_STUDY)],
    read: async (path) => await openStudy(path),
  },
  {
    name: "fan curves",
    share: 12,
    bases: async () => [await base(join(DATA, "fans/fans.csv"))],
    read: async (path) => readFans(await readTextFile(path, "file of fan curves", "table"), path),
  },
  {
    name: "price list",
    share: 12,
    bases: async () => [await base(join(DATA, "prices/harrow-bend.csv"))],
    read: async (path) => readPriceList(await readTextFile(path, "price list", "table"), path),
  },
  {
    name: "sweep file",
    share: 9,
    bases: () => Promise.resolve(SWEEPS.map((text, place) => made(`sweep ${place + 1}`, text))),
    read: async (path) => {
      const plan = readSweep(await readTextFile(path, "sweep file", "settings"), path);
      // samples of a million rows are made at once: no fault, but not for each input
      return plan.form === "sample" && plan.rows > 5000 ? plan : [plan, rowValues(plan)(1)];
    },
  },
  {
    name: "rows of a sweep",
    share: 6,
    bases: () => {
      const row = (number: number) => `${number},${6 + number},corrugated-4in,0.15,31.5,dig,`;
      const lines = [headLine(COLUMNS), ...[1, 2, 3, 4].map(row), ""];
      return Promise.resolve([made("rows.csv", lines.join("\n"))]);
    },
    read: async (path) => (await readRows(path, COLUMNS)).rows,
  },
  {
    name: "list of a sweep",
    share: 5,
    bases: () => {
      const text = JSON.stringify({ made: MADE, rows: 12, figures: FIGURES }, null, 2);
      return Promise.resolve([made("sweep.json", text)]);
    },
    read: async (path, folder) => {
      const place = join(folder, "out");
      await Deno.mkdir(place, { recursive: true });
      await Deno.copyFile(path, join(place, "sweep.json"));
      const manifest = await findManifest(place, MADE);
      if (manifest === null) return null;
      return [manifest.rows.toFixed(0), tableColumns(PLAN.keys, manifest.figures)];
    },
  },
  {
    name: "notebook",
    share: 5,
    bases: async () => {
      const folder = join(PROJECT, "notebooks");
      const names = (await Array.fromAsync(Deno.readDir(folder))).map(({ name }) => name);
      const all = names.filter((name) => name.endsWith(".ipynb")).sort();
      return await Promise.all(all.map(async (name) => {
        const { text } = await base(join(folder, name));
        return made(name, withoutOutputs(text));
      }));
    },
    read: async (path) => {
      const notebook = parseNotebook(await Deno.readTextFile(path), path);
      parseNotebook(formatNotebook(notebook), path);
      renderWorkbook({
        title: "x",
        facts: [],
        notices: [],
        sections: [{ name: "01-x", notebook }],
        provenance: [],
      });
      return null;
    },
  },
  {
    name: "greenhouse log",
    share: 2,
    slow: true,
    bases: async () => OPEN_DATA === undefined ? [] : await openFiles("greenhouse", 600),
    read: async (path) => {
      const given = await Deno.readTextFile(path);
      const folder = join(OPEN_DATA!, "greenhouse");
      const sound = async (name: string) => (await base(join(folder, name), 600)).text;
      const outside = /Iglob|Windsp/.test(given.slice(0, 400));
      return outside
        ? readGreenhouseLog(given, await sound("reference_climate.csv"))
        : readGreenhouseLog(await sound("weather.csv"), given);
    },
  },
];

/** Outputs are large and change nothing for the reader. */
function withoutOutputs(text: string): string {
  const notebook = JSON.parse(text) as { cells: { outputs?: unknown[] }[] };
  for (const cell of notebook.cells) if (cell.outputs !== undefined) cell.outputs = [];
  return JSON.stringify(notebook, null, 1);
}
