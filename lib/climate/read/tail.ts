/** Blank lines at the end of a file. @module */

/** Lines without the blank ones at the end. */
export function trimTail(lines: readonly string[]): string[] {
  let end = lines.length;
  while (end > 0 && lines[end - 1]!.trim() === "") end--;
  return lines.slice(0, end);
}
