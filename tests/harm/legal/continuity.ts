/** Changes every number of a study by a millionth and looks how far its figures move. @module */
import type { Figures } from "winterground/basics/mod.ts";
import { COMPUTATIONS } from "winterground/study/chapters.ts";
import { FIELDS } from "winterground/study/file/fields.ts";
import { openStudyText, startRun, type Study } from "winterground/study/mod.ts";
import type { Depth } from "./attack.ts";
import { type StudyData, studyOf, studyText } from "./study.ts";
import { type Plain, written } from "./values.ts";

/** Relative change of an input. */
export const STEP = 1e-6;

/**
 * Share of itself by which a figure may move, by how far the study is taken. The largest moves found:
 * 3e-6 up to the fan (106 numbers), 2e-6 up to the house's year (14 of them), 5e-6 up to the store's
 * (18 of them), which is given room for a switch of the fan that falls a step of the clock later.
 */
export const MOST: Readonly<Record<Depth, number>> = {
  fan: 1e-5,
  site: 1e-5,
  house: 1e-5,
  store: 1e-4,
};

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
export const CONTINUITY_BASE: StudyData = studyOf({
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

/** Keys of numbers that the study has. */
export function numberKeys(study: Study): readonly string[] {
  return [...FIELDS.values()].filter(({ key, kind }) =>
    kind !== "text" && !WHOLE.has(key) && typeof valueAt(study, key) === "number"
  ).map(({ key }) => key);
}

/** Whole numbers have no millionth; clock and place of the weather are one with its file. */
const WHOLE = new Set([
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
]);

function valueAt(data: unknown, key: string): unknown {
  return key.split(".").reduce<unknown>(
    (part, name) => (part as Record<string, unknown> | null | undefined)?.[name],
    data,
  );
}

/** The study with one number a millionth larger, or smaller where it stands at its upper limit. */
export function nudged(data: StudyData, study: Study, key: string): readonly StudyData[] {
  const value = valueAt(study, key) as number;
  const step = STEP * (value === 0 ? 1 : value);
  return [value + step, value - step].map((other) =>
    withValue(data, key.split("."), written(key, other)) as StudyData
  );
}

function withValue(data: Plain, [first, ...rest]: readonly string[], value: Plain): Plain {
  const parts = data as Readonly<Record<string, Plain>>;
  const inner = parts[first!];
  return { ...parts, [first!]: rest.length === 0 ? value : withValue(inner ?? {}, rest, value) };
}

/** Figures of a study taken so far. */
export async function figuresOf(study: Study, depth: Depth): Promise<Figures> {
  const none = { after: [], takes: () => null, compute: () => [] };
  const computations = new Map([...COMPUTATIONS, ["ranking", none]]) as typeof COMPUTATIONS;
  const run = startRun(study, { cacheFolder: null, computations });
  const early = ["climate", "soil", "tubes", "headers", "fan"] as const;
  if (depth === "store") return await run.figures();
  return await run.figures(...early, ...(depth === "house" ? ["house" as const] : []));
}

/** Shares by which figures moved, the largest first. */
export function moves(key: string, before: Figures, after: Figures): readonly Move[] {
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

/** What the change of one key moves, by the first of both directions that the schema allows. */
export async function movesOf(
  { data, study, before, folder }: {
    readonly data: StudyData;
    readonly study: Study;
    readonly before: Figures;
    readonly folder: string;
  },
  key: string,
  depth: Depth,
): Promise<readonly Move[]> {
  const faults: unknown[] = [];
  for (const other of nudged(data, study, key)) {
    let changed: Study;
    try {
      changed = await openStudyText(studyText(other), `${folder}/legal.yaml`);
    } catch (error) {
      faults.push(error);
      continue;
    }
    return moves(key, before, await figuresOf(changed, depth));
  }
  throw faults[0];
}
