/** Winters made from monthly normals, as many as one likes. @module */
export { makeWinter, winterClimate } from "./winter.ts";
export type { WinterClimate, WinterKey } from "./winter.ts";
export { measuredWinter } from "./measured.ts";
