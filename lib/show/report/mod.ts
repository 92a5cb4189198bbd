/** The report for a client, piece by piece; every number comes from the chapters' results. @module */
export * from "./contractor.ts";
export * from "./design.ts";
export * from "./evidence.ts";
export * from "./first_page.ts";
export * from "./open_items.ts";
export * from "./outcome.ts";
export type { DrawingName } from "../../drawings/mod.ts";
export type { CoilPiece, CutCoil } from "../../worth/mod.ts";
