/** How long a cell may take. @module */

/** s each cell may take unless told otherwise. */
export const DEFAULT_CELL_LIMIT = 300;
