/** Moments for a reader. @module */

/** A moment for a reader: 2026-01-31 14:05. */
export function timeText(seconds: number): string {
  return new Date(seconds * 1000).toISOString().slice(0, 16).replace("T", " ");
}
