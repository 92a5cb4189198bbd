/** The demo's search for designs with a made-up year of its own, so that no year is run. */
import { coarseRequest } from "winterground/store/mod.ts";
import { openStudy, startRun } from "winterground/study/mod.ts";
import { designAir } from "../../../lib/tubes/mod.ts";
import { designAxes, ownChoice } from "../../../lib/worth/designs/choices.ts";
import { type BuiltDesign, designJudge } from "../../../lib/worth/designs/judge.ts";
import type { DesignChoice, DesignQuestion } from "../../../lib/worth/designs/types.ts";
import { takeOffInputs } from "../../../lib/worth/take_off_inputs.ts";

const demo = new URL("../../../data/studies/demo/harrow-bend.yaml", import.meta.url);
const study = await openStudy(decodeURIComponent(demo.pathname));
const run = startRun(study, { cacheFolder: null });
const earlier = {
  soil: await run.soil(),
  tubes: await run.tubes(),
  headers: await run.headers(),
  fan: await run.fan(),
};

export const demoQuestion: DesignQuestion = {
  wanted: true,
  request: coarseRequest(study, earlier),
  tubes: study.tubes,
  headers: study.headers,
  fan: study.fan,
  house: study.house,
  air: designAir(study),
  worth: {
    inputs: { ...study.worth, search: true, searchRuns: 12 },
    field: takeOffInputs(study, earlier),
    energy: { backupHeat: 8000, backupHeatNoFan: 12_000, fanEnergy: 1500 },
    faults: [],
    measures: [],
    coldestHourGain: 4,
    cropHoursAvoided: 60,
    runsFree: true,
  },
  own: { saved: 4000, cropHoursAvoided: 60, hours: 10, fanEnergy: 1500, power: earlier.fan.power },
};

const small = {
  ...demoQuestion,
  tubes: { ...demoQuestion.tubes, count: 12, layers: 1, airFlow: 0.27 },
  headers: { ...demoQuestion.headers, groups: 1, diameter: 0.32, returnDiameter: 0.32 },
  fan: { ...demoQuestion.fan, count: 1, speed: 0.7 },
};
const { request: { fan: { power } } } = designJudge(small)(ownChoice(small)) as BuiltDesign;

/** A third of the demo's field, whose headers are worked out in little time. */
export const smallQuestion: DesignQuestion = { ...small, own: { ...small.own, power } };

const WHOLE = new Set<keyof DesignChoice>(["count", "layers", "fans"]);

/** How values are drawn: those of the axes, or any between the least and the greatest of them. */
export type Drawing = "axes" | "between";

/**
 * Designs within the limits, drawn at random from all that may be chosen; the same for the same seed.
 *
 * @param question the study
 * @param count of designs wanted
 * @param keys parts that are drawn; the others are the study's own
 * @param drawing how numbers are drawn; tubes, fans and the board are always those of the axes
 * @param seed of the draw, a whole number above 0
 * @throws {RangeError} where one draw in a thousand is not within the limits
 */
export function drawnDesigns(
  question: DesignQuestion,
  count: number,
  keys: readonly (keyof DesignChoice)[],
  drawing: Drawing = "axes",
  seed = 7,
): readonly BuiltDesign[] {
  const axes = designAxes(question);
  const judge = designJudge(question);
  let state = seed;
  const random = () => (state = (48_271 * state) % 2_147_483_647) / 2_147_483_647;
  const found: BuiltDesign[] = [];
  for (let tries = 0; found.length < count; tries++) {
    if (tries > 1000 * count) throw new RangeError(`only ${found.length} designs in ${tries}`);
    const drawn: Record<string, unknown> = { ...ownChoice(question) };
    for (const key of keys) {
      const values: readonly unknown[] = axes[key];
      const [least, greatest] = [values[0], values.at(-1)];
      if (drawing === "between" && typeof least === "number") {
        const value = least + random() * (greatest as number - least);
        drawn[key] = WHOLE.has(key) ? Math.round(value) : Math.round(1000 * value) / 1000;
      } else drawn[key] = values[Math.floor(random() * values.length)];
    }
    const judged = judge(drawn as unknown as DesignChoice);
    if (typeof judged !== "string" && judged.breaks === null) found.push(judged);
  }
  return found;
}
