/** A small study and its changes, as the study file and as a live page say them. @module */
import type { Changes, LiveFigures } from "winterground/live/types.ts";
import type { ChapterResults } from "winterground/study/mod.ts";

/** A change of the small study. */
export interface CaseOfStudy {
  readonly name: string;
  /** as its page says it */
  readonly changes: Changes;
  /** as its file says it */
  readonly file: (text: string) => string;
}

const inFile = (found: string, by: string) => (text: string) => {
  if (!text.includes(found)) throw new Error(`the study has no ${found}`);
  return text.replace(found, by);
};

/** Nothing moved. */
export const AS_IT_IS: CaseOfStudy = { name: "as it is", changes: {}, file: (text) => text };

/** Every slider moved by itself. */
export const CASES: readonly CaseOfStudy[] = [
  { name: "length", changes: { length: 8 }, file: inFile("{count: 6,", "{length: 8 m, count: 6,") },
  { name: "count", changes: { count: 9 }, file: inFile("count: 6", "count: 9") },
  { name: "speed", changes: { speed: 0.5 }, file: inFile("speed: 0.4", "speed: 0.5") },
  {
    name: "moisture",
    changes: { moisture: 0.31 },
    file: inFile("house: {", "soil: {moisture: 31 %}\nhouse: {"),
  },
  {
    name: "conductivity",
    changes: { conductivity: 1.9 },
    file: inFile("house: {", "soil: {measuredConductivity: 1.9 W/(m K)}\nhouse: {"),
  },
  {
    name: "leakage",
    changes: { leakage: 1.35 },
    file: inFile("width: 6 m,", "width: 6 m, leakage: 1.35 1/h,"),
  },
  {
    name: "curtain",
    changes: { curtain: 1.2 },
    file: inFile("coverage: 80 %", "coverage: 80 %, resistance: 1.2 m2 K/W"),
  },
  {
    name: "set point",
    changes: { setPoint: 7.5 },
    file: inFile("width: 6 m,", "width: 6 m, heatSetPoint: 7.5 degC,"),
  },
];

const TOGETHER = CASES.filter(({ name }) => name !== "conductivity");

/** All sliders of one page moved. */
export const ALL_MOVED: CaseOfStudy = {
  name: "all moved",
  changes: Object.assign({}, ...TOGETHER.map(({ changes }) => changes)),
  file: (text) => TOGETHER.reduce((changed, { file }) => file(changed), text),
};

/** Figures of a run under the names of a live page. */
export function figuresOfRun(
  { fan, store }: Pick<ChapterResults, "fan" | "store">,
): LiveFigures {
  return {
    airFlow: fan.airFlow,
    heatIn: store.heatIn,
    heatOut: store.heatOut,
    fanEnergy: store.fanEnergy,
    coldestHour: store.coldestHour,
    coldestHourNoFan: store.coldestHourNoFan,
    hoursBelowFreezing: store.crop.freezing.hours,
    hoursBelowFreezingNoFan: store.cropNoFan.freezing.hours,
    backupHeat: store.backupHeat,
    backupHeatNoFan: store.backupHeatNoFan,
    savedHeat: store.savedHeat,
  };
}
