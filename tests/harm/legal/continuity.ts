/** Changes every number of a study by a millionth and looks how far its figures move. @module */
import type { Figures } from "winterground/basics/mod.ts";
import { FIELDS } from "winterground/study/file/fields.ts";
import { openStudyText, startRun, type Study } from "winterground/study/mod.ts";
import { cheap, type Depth } from "./attack.ts";
import { type StudyData, studyOf, studyText } from "./study.ts";
import { type Plain, written } from "./values.ts";

/** Relative change of an input. */
const STEP = 1e-6;

/**
 * Share of itself by which a figure may move, however far the study is taken. The largest moves found of
 * 127 numbers up to the store's year and its worth: 5e-6, of the coldest hour with the latitude.
 */
export const MOST = 1e-5;

/**
 * Figures that count: hours and steps of the clock, and what hangs on the day on which something
 * happens first or last. They jump by whole units whatever the size of a change.
 */
const COUNTED = new Set(["h", "date", "text"]);

/** A figure that moved. */
export interface Move {
  /** key of the study that was changed */
  readonly key: string;
  /** key of the figure */
  readonly figure: string;
  /** share of the figure, or of the scale of its unit where it is near 0 */
  readonly share: number;
}

/** A study in which nearly every number has a part to play. */
const CONTINUITY_BASE: StudyData = studyOf({
  "soil.waterTableDepth": "2.5 m",
  "soil.layers": [{ thickness: "0.3 m", texture: "silt" }],
  "house.northWall": "0.4 W/(m2 K)",
  "house.northRoof": "0.4 W/(m2 K)",
  "house.endWalls": "0.5 W/(m2 K)",
  "house.glazingSnow": "cleared",
  "house.snowDepth": "0.3 m",
  "house.curtain": { coverage: "80 %" },
  "house.edgeInsulation": "1.5 m2 K/W",
  "house.edgeInsulationDepth": "0.6 m",
  "house.edgeInsulationWing": "0.3 m",
  "house.footingDepth": "0.5 m",
  "house.northEarthHeight": "0.5 m",
  "house.pathShare": "20 %",
  "house.waterVolume": "1 m3",
  "house.masonryVolume": "1 m3",
  "house.masonrySurface": "5 m2",
  "house.summerShade": "30 %",
  "house.heaterPower": "3 kW",
  "tubes.count": 6,
  "tubes.layers": 1,
  "tubes.airFlow": "0.118 m3/s",
  "tubes.depth": "0.8 m",
  "headers.inlet": "protruding",
  "headers.insertion": "10 mm",
  "fan.fan": "duct-315",
  "fan.count": 1,
  "fan.speed": 0.4,
  "store.flatBoardResistance": "1 m2 K/W",
  "store.flatBoardDepth": "1.5 m",
  "store.collector": { place: "outside", area: "4 m2" },
  "store.gravelBed": { margin: "0.15 m" },
  "worth.prices": "prices.csv",
});

/**
 * Numbers that the first study leaves open, because another way of saying the same stands there: a
 * measured conductivity instead of one from texture and water, a lift of the intake instead of an
 * estimate, and what is given by month or in lists.
 */
const OTHER_WAYS: StudyData = studyOf({
  "place.horizon": [
    { azimuth: "150 deg", elevation: "10 deg" },
    { azimuth: "200 deg", elevation: "5 deg" },
  ],
  "soil.measuredConductivity": "1.4 W/(m K)",
  "soil.layers": [
    {
      thickness: "0.3 m",
      texture: "silt",
      dryDensity: "1400 kg/m3",
      moisture: "21 %",
      quartz: "35 %",
    },
    { thickness: "0.8 m", texture: "fine sand", measuredConductivity: "1.1 W/(m K)" },
  ],
  "house.curtain": { coverage: "80 %", closeBelowInside: "14 degC" },
  "house.lightToAir": "40 %",
  "house.leafArea": ["1.2", "1.2", "1.8", "2.5", "2.5", "2", "1.5", "1", "1.5", "2", "1.8", "1.5"],
  "tubes.count": 6,
  "tubes.layers": 1,
  "tubes.airFlow": "0.118 m3/s",
  "tubes.depth": "0.8 m",
  "headers.manning": 0.02,
  "fan.fan": "duct-315",
  "fan.count": 1,
  "fan.speed": 0.4,
  "store.stratification": "2 K",
  "store.chargeBelowGround": "16 degC",
  "store.maximumStore": "25 degC",
  "store.collector": { place: "outside", area: "4 m2", azimuth: "170 deg" },
  "worth.prices": "prices.csv",
  "worth.coilLength": "50 m",
  "worth.cropValue": 5000,
  "worth.budget": 30000,
});

/** A number of a study that can be changed. */
export interface StudyNumber {
  /** the study that holds it */
  readonly data: StudyData;
  /** key of the study file */
  readonly key: string;
  /** way to it in the study; through the place in the list where there are several */
  readonly way: readonly string[];
}

/**
 * Keys whose numbers have no millionth: they count things, name a seed, or say which clock the weather
 * is told by.
 */
export const WITHOUT_MILLIONTH: ReadonlySet<string> = new Set([
  "place.timeZone",
  "climate.seed",
  "tubes.count",
  "tubes.layers",
  "headers.groups",
  "fan.count",
  "store.slices",
  "store.spinUpYears",
  "worth.years",
  "worth.winters",
  "worth.searchRuns",
]);

/** Keys of the study file that hold numbers. */
export const NUMBER_KEYS: readonly string[] = [...FIELDS.values()]
  .filter(({ kind }) => kind !== "text").map(({ key }) => key);

/**
 * Every number of the study file that can be changed by a millionth, each in the first study that has
 * one.
 *
 * @param folder where the files lie that the studies name
 */
export async function studyNumbers(folder: string): Promise<readonly StudyNumber[]> {
  const found = new Map<string, readonly StudyNumber[]>();
  for (const data of [CONTINUITY_BASE, OTHER_WAYS]) {
    const study = await openStudyText(studyText(data), `${folder}/legal.yaml`);
    for (const key of NUMBER_KEYS) {
      if (found.has(key) || WITHOUT_MILLIONTH.has(key)) continue;
      const ways = waysTo(study, key.split("."))
        .filter((way) => isNumeric(valueAt(study, way)) && given(data, way));
      if (ways.length > 0) found.set(key, ways.map((way) => ({ data, key, way })));
    }
  }
  return [...found.values()].flat();
}

const isNumeric = (value: unknown) => [value].flat().every((one) => typeof one === "number");

/** The entry of a list exists in the file; everything else may be left to its default. */
const given = (data: StudyData, way: readonly string[]) =>
  !way.some((name) => /^\d+$/.test(name)) || valueAt(data, way) !== undefined;

/** Ways to the values of a key, one for each entry of its list. */
function waysTo(value: unknown, names: readonly string[]): readonly (readonly string[])[] {
  if (names.length === 0) return [[]];
  if (typeof value !== "object" || value === null) return [];
  if (Array.isArray(value)) {
    return value.flatMap((entry, place) =>
      waysTo(entry, names).map((way) => [String(place), ...way])
    );
  }
  const [first, ...rest] = names as [string, ...string[]];
  return waysTo((value as Record<string, unknown>)[first], rest).map((way) => [first, ...way]);
}

function valueAt(data: unknown, way: readonly string[]): unknown {
  return way.reduce<unknown>(
    (part, name) => (part as Record<string, unknown> | null | undefined)?.[name],
    data,
  );
}

/** The study with one number a millionth larger, or smaller where it stands at its upper limit. */
function nudged({ data, key, way }: StudyNumber, study: Study): readonly StudyData[] {
  const value = valueAt(study, way) as number | readonly number[];
  return [1, -1].map((sign) => {
    const other = (one: number) => written(key, one + sign * STEP * (one === 0 ? 1 : one));
    const changed = typeof value === "number" ? other(value) : value.map(other);
    return withValue(data, way, changed) as StudyData;
  });
}

function withValue(data: Plain, [first, ...rest]: readonly string[], value: Plain): Plain {
  const inner = (data as Readonly<Record<string, Plain>>)[first!];
  const changed = rest.length === 0 ? value : withValue(inner ?? {}, rest, value);
  return Array.isArray(data)
    ? data.with(Number(first), changed)
    : { ...data as Readonly<Record<string, Plain>>, [first!]: changed };
}

/** Figures of a study taken so far; what was computed for another one with the same inputs is kept. */
async function figuresOf(study: Study, depth: Depth, cacheFolder: string): Promise<Figures> {
  const run = startRun(study, { cacheFolder, computations: cheap() });
  const early = ["climate", "soil", "tubes", "headers", "fan"] as const;
  if (depth === "store") return await run.figures();
  return await run.figures(...early, ...(depth === "house" ? ["house" as const] : []));
}

/** Shares by which figures moved, the largest first. */
function moves(key: string, before: Figures, after: Figures): readonly Move[] {
  return Object.entries(before).flatMap(([figure, { value, unit }]): Move[] => {
    const other = after[figure]?.value;
    if (COUNTED.has(unit) || typeof value !== "number" || typeof other !== "number") {
      return value === other || COUNTED.has(unit) ? [] : [{ key, figure, share: Infinity }];
    }
    return [{ key, figure, share: Math.abs(other - value) / scaleOf(value, unit) }];
  }).filter(({ share }) => share > 0).toSorted((one, two) => two.share - one.share);
}

/** Size against which a change counts: a figure's own, at least what its reader would call little. */
function scaleOf(value: number, unit: string): number {
  const least: Readonly<Record<string, number>> = { degC: 10, K: 1, kWh: 100, W: 10, "1": 0.1 };
  return Math.max(Math.abs(value), least[unit] ?? 1e-9);
}

/**
 * What the change of each number moves, by the first of both directions that the schema allows.
 *
 * @param numbers of {@link studyNumbers}
 * @param depth how far the studies are taken
 * @param folder where the files lie that the studies name; results are kept in it
 */
export async function* movesOf(
  numbers: readonly StudyNumber[],
  depth: Depth,
  folder: string,
): AsyncGenerator<readonly Move[]> {
  const cache = `${folder}/cache`;
  const open = (data: StudyData) => openStudyText(studyText(data), `${folder}/legal.yaml`);
  const before = new Map<StudyData, Figures>();
  for (const number of numbers) {
    const { data, way } = number;
    const study = await open(data);
    if (!before.has(data)) before.set(data, await figuresOf(study, depth, cache));
    const [up, down] = nudged(number, study);
    const changed = await open(up!).catch(() => open(down!));
    yield moves(way.join("."), before.get(data)!, await figuresOf(changed, depth, cache));
  }
}
