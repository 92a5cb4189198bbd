/**
 * What stands for the reader of tables in a page's script, where only the project's own tables are
 * read. The package does more than that, and is larger than this whole room.
 *
 * @module
 */

/** A cell behind its comma, in quotation marks or without; a quotation mark within is written twice. */
const CELL = /,(?:"((?:[^"]|"")*)"|([^,"]*))/g;

function cellsOf(line: string): string[] {
  return Array.from(
    `,${line}`.matchAll(CELL),
    ([, quoted, plain]) => quoted === undefined ? plain! : quoted.replaceAll('""', '"'),
  );
}

/** The part of the package's interface that reading a line takes. */
const tableLine: { parse(line: string): { readonly data: readonly string[][] } } = {
  parse: (line) => ({ data: [cellsOf(line)] }),
};
export default tableLine;
