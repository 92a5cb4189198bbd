/** Name of the page for whoever checks a study, in the folder of its run. @module */

/** File of the page. */
export const DOUBT_PAGE = "doubt.html";
