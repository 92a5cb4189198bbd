/** A house with a store and without through many winters. @module */
export { firstOfJulyTask, wintersTask, winterSteps } from "./run.ts";
export type { HouseWinter, PairedWinter, WinterSet } from "./types.ts";
