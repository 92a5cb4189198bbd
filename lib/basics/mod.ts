/** Errors, notices and constants that every chapter uses. @module */
export * from "./constants.ts";
export * from "./errors.ts";
export * from "./readable.ts";
export * from "./notices.ts";
export * from "./data_table.ts";
export * from "./water.ts";
export * from "./series/mod.ts";
export * from "./figures.ts";
export * from "./formula.ts";
export * from "./result_table.ts";
export * from "./chapter.ts";
export * from "./ratio.ts";
export * from "./round.ts";
export * from "./interpolate.ts";
export * from "./roots.ts";
export * from "./same.ts";
export * from "./work.ts";
