/**
 * Files aim at 150 lines; one above 300 says in its first comment why it is long.
 *
 * @module
 */

/** Lines above which a file needs a reason. */
export const MOST_LINES = 300;

/**
 * What is wrong with the length of a file.
 *
 * @param path shown in the message
 * @param text of the file
 * @returns at most one fault
 */
export function lengthFaults(path: string, text: string): string[] {
  const lines = text.trimEnd().split("\n").length;
  if (lines <= MOST_LINES || /\blong\b[^*]*\b(?:because|since)\b/.test(firstComment(text))) {
    return [];
  }
  return [
    `${path}: ${lines} lines, more than ${MOST_LINES}: split it, or say in its first comment ` +
    `"long because …"`,
  ];
}

function firstComment(text: string): string {
  const block = /^\/\*\*?([\s\S]*?)\*\//.exec(text);
  if (block !== null) return block[1]!.replaceAll(/^\s*\* ?/gm, "").replaceAll("\n", " ");
  return (/^(?:\/\/.*\n)+/.exec(text)?.[0] ?? "").replaceAll(/\n\/\/ ?/g, " ");
}
