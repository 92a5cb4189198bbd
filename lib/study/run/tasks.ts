/** Everything a worker can be asked to do: the pieces of the chapters, and whole results. @module */
import type { AnyComputation, AnyTask } from "../../basics/mod.ts";
import { screeningTask } from "../../house/assumptions.ts";
import { stagesTask } from "../../measured/calibrated/calibration.ts";
import { replayTask } from "../../measured/calibrated/replay.ts";
import { seasonTask } from "../../measured/compute.ts";
import { bareSectionTask } from "../../store/root_zone.ts";
import { STORE_TASKS } from "../../store/runs.ts";
import { firstOfJulyTask, wintersTask } from "../../store/winters/mod.ts";
import { sieveTask } from "../../worth/designs/sieve.ts";
import { COMPUTATIONS } from "../chapters.ts";

/** The task that computes a result in one piece. */
export function wholeTask(name: string, { compute }: AnyComputation): AnyTask {
  return { name: `result.${name}`, run: compute };
}

/** Every task by its name. */
export const TASKS: ReadonlyMap<string, AnyTask> = new Map(
  [
    screeningTask,
    ...STORE_TASKS,
    bareSectionTask,
    firstOfJulyTask,
    wintersTask,
    seasonTask,
    stagesTask,
    replayTask,
    sieveTask,
    ...Array.from(COMPUTATIONS, ([name, computation]) => wholeTask(name, computation)),
  ].map((task) => [task.name, task]),
);
