/**
 * Room for what is shown: a notebook has a wide page and both systems of units in its tables; a report
 * has half a page for a picture and the reader's units alone.
 *
 * @module
 */

/** Width of a picture in a notebook, px. */
export const NOTEBOOK_WIDTH = 760;

/** Width of a picture in a report, px: at 358 px of a phone its 12 px letters are 9 px and more. */
export const REPORT_WIDTH = 440;

let narrow = false;

/**
 * Draws something for a report.
 *
 * @param draw makes it, at once
 */
export function forReport<T>(draw: () => T): T {
  const before = narrow;
  narrow = true;
  try {
    return draw();
  } finally {
    narrow = before;
  }
}

/** Width of pictures drawn now, px. */
export function pictureWidth(): number {
  return narrow ? REPORT_WIDTH : NOTEBOOK_WIDTH;
}

/** True where tables have the reader's units alone. */
export function inOneSystem(): boolean {
  return narrow;
}
