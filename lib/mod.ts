/**
 * What every notebook needs: the study and its run, and the one way to show something. What belongs
 * to a chapter is in the module of its name, `winterground/soil`, `winterground/store`.
 *
 * ```ts ignore
 * import { currentRun, show } from "winterground";
 * import * as store from "winterground/store";
 *
 * const run = await currentRun();
 * await show(store.weekChart(await run.store(), run.study.climate));
 * ```
 *
 * @module
 */
export {
  type ChapterName,
  type FileLocation,
  InputError,
  InputErrors,
  type Notice,
  type NoticeLevel,
} from "./basics/mod.ts";
export { exercise } from "./show/exercises.ts";
export { answerCard, type AnswerWords, type Light } from "./show/kit/answer.ts";
export { type Lesson, openLesson } from "./show/lesson/lesson.ts";
export { type Caution, caution, notices } from "./show/kit/caution.ts";
export type { Exercise, UsualSlip } from "./show/kit/exercise.ts";
export type { Cell, Column } from "./show/kit/data_table.ts";
export type { DisplayItem } from "./show/kit/figure.ts";
export { show, type ShownItem } from "./show/kit/show.ts";
export { type NamedNumber, numbers, table } from "./show/kit/table.ts";
export { currentRun } from "./show/study/current_run.ts";
export { drawing, type SheetName } from "./show/study/drawing.ts";
export { drivers } from "./show/study/drivers.ts";
export { figuresTable } from "./show/study/figures_table.ts";
export { inputs, type InputSection, siteInputs } from "./show/study/inputs.ts";
export { whatIf } from "./show/study/what_if.ts";
export { type Changes, openStudy, startRun, type SweptValue } from "./study/mod.ts";
