/** Names of files. @module */

/**
 * Name of a file without its folders, on any machine.
 *
 * @param path with / or \ between folders
 */
export function fileName(path: string): string {
  return path.replace(/^.*[\\/]/, "");
}
