/** The cases in which the fast engine is held against the full one, and what one of them gives. */
import process from "node:process";
import { parseDocument } from "yaml";
import { defaultStudyPath, openStudyText } from "../../lib/study/mod.ts";
import type { StoreRequest } from "../../lib/store/site.ts";
import {
  airDifference,
  fastEngine,
  fullEngine,
  runWinter,
  type Winter,
} from "../support/freezing_runs.ts";
import { requestOf } from "./store_request.ts";

/** Open weather files by place; the demo has its own weather. */
export const CLIMATES = {
  "demo": null,
  "Fargo": "tmy3_nd_fargo.csv",
  "International Falls": "tmy3_mn_international_falls.csv",
  "Leadville": "tmy3_co_leadville.csv",
} as const;
/** Textures, each with its usual density, moisture and quartz; loam as in the demo. */
export const SOILS = ["loam", "clay", "fine sand"] as const;
export const DIRECTIONS = ["along", "across"] as const;
/** Tubes across the house of the demo, m. */
const ACROSS = { count: 30, length: "7 m", spacing: "1.1 m", direction: "across" };

/** One case. */
export interface EngineCase {
  readonly climate: keyof typeof CLIMATES;
  readonly soil: typeof SOILS[number];
  readonly direction: typeof DIRECTIONS[number];
  /** along the tubes */
  readonly slices: number;
  /** true: a heater without limit holds the set point; false: the house runs free */
  readonly heated: boolean;
}

/** What a case gave; shares are fast over full less one. */
export interface EngineRow extends EngineCase {
  /** K, 99 % of the hours of December to March */
  readonly rms: number;
  /** K */
  readonly p95: number;
  /** degC */
  readonly coldest: readonly [fast: number, full: number];
  readonly heatIn: number;
  readonly heatOut: number;
  /** NaN where the house runs free */
  readonly backUp: number;
  /** CPU seconds */
  readonly seconds: readonly [fast: number, full: number];
}

/** All cases of a number of slices. */
export function allCases(slices: number): EngineCase[] {
  return (Object.keys(CLIMATES) as EngineCase["climate"][]).flatMap((climate) =>
    SOILS.flatMap((soil) =>
      DIRECTIONS.flatMap((direction) =>
        [false, true].map((heated) => ({ climate, soil, direction, slices, heated }))
      )
    )
  );
}

/** The name of a case, for the command line and for what is kept. */
export function caseName({ climate, soil, direction, slices, heated }: EngineCase): string {
  return [climate, soil, direction, heated ? "heated" : "free", `${slices} slices`].join(", ");
}

/** The demo in another place, on another soil, with its tubes across. */
async function caseRequest(given: EngineCase, openData: string | undefined): Promise<StoreRequest> {
  const path = defaultStudyPath();
  const text = parseDocument(await Deno.readTextFile(path));
  text.setIn(["soil", "texture"], given.soil);
  if (given.soil !== "loam") {
    for (const key of ["dryDensity", "moisture", "quartz"]) text.deleteIn(["soil", key]);
  }
  if (given.direction === "across") {
    for (const [key, value] of Object.entries(ACROSS)) text.setIn(["tubes", key], value);
  }
  const file = CLIMATES[given.climate];
  if (file !== null && openData === undefined) {
    throw new Error(`OPEN_DATA does not name the folder with climate/${file}`);
  }
  const study = await openStudyText(
    String(text),
    path,
    file === null ? {} : { climate: `${openData}/climate/${file}` },
  );
  return await requestOf(study, given.slices);
}

/** Runs a case on both engines, 300 s in every hour, October to April from the undisturbed ground. */
export async function runCase(given: EngineCase, openData: string | undefined): Promise<EngineRow> {
  const request = await caseRequest(given, openData);
  const heater = given.heated ? Infinity : 0;
  const winter = { request, steps: [300], shortSteps: true, heater };
  const [fast, fastTime] = timed(() => runWinter(winter, fastEngine(winter)));
  const [full, fullTime] = timed(() => runWinter(winter, fullEngine(winter)));
  return {
    ...given,
    ...airDifference(fast, full),
    coldest: [coldest(fast), coldest(full)],
    heatIn: fast.heatIn / full.heatIn - 1,
    heatOut: fast.heatOut / full.heatOut - 1,
    backUp: given.heated ? fast.heater / full.heater - 1 : NaN,
    seconds: [fastTime, fullTime],
  };
}

function timed<T>(work: () => T): [T, number] {
  const used = () => {
    const { user, system } = process.cpuUsage();
    return (user + system) / 1e6;
  };
  const before = used();
  const value = work();
  return [value, used() - before];
}

/** degC; hours that were not run are nought and never the coldest. */
function coldest({ air }: Winter): number {
  return Math.min(...air);
}
