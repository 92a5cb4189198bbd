/** A site of lessons and pages. @module */
export { documentBody, type ExerciseCell, lessonBody, type SiteDraft } from "./draft.ts";
export { bindSite, type Site, type SiteInput, type SiteNeighbour } from "./site.ts";
export { renderSinglePage, type SinglePage } from "./single.ts";
export type { SiteFile } from "./shell.ts";
