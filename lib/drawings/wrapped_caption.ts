/** Words at the head of a sheet that are longer than a line. @module */
import { caption, CAPTION_SIZE, wrap } from "./sheet.ts";

/** Widths of letters in the widest of the usual fonts, over the half of their height that is assumed. */
const WIDTH = 1.15;
const BOLD_WIDTH = 1.3;

/**
 * Words at the head of a sheet, broken into lines that fit.
 *
 * @param width mm, room for a line
 * @param warnings stand first and in bold
 */
export function wrappedCaption(
  width: number,
  warnings: readonly string[],
  others: readonly string[],
): Element[] {
  const bold = warnings.flatMap((words) => wrap(words, width / BOLD_WIDTH, CAPTION_SIZE));
  const plain = others.flatMap((words) => wrap(words, width / WIDTH, CAPTION_SIZE));
  return caption([...bold, ...plain], bold.length);
}
