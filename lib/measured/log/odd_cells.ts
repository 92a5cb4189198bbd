/** Cells that are no values, as findings. @module */
import { describeLocation } from "../../basics/mod.ts";
import type { LoggerFile } from "./logger_file.ts";
import type { LoggerMap } from "./map.ts";
import type { Finding } from "./types.ts";

/** A row by its file and its place in it. */
interface Written {
  readonly file: Uint16Array;
  readonly row: Uint32Array;
}

/**
 * Findings of cells that are text, or numbers that cannot be true.
 *
 * @param logger how it writes
 * @param files its files
 * @param rows where each row was written, s since 1970 UTC at which each stands, and s between rows
 */
export function oddCells(
  logger: LoggerMap,
  files: readonly LoggerFile[],
  { written, timeOf, interval }: {
    readonly written: Written;
    readonly timeOf: (at: number) => number;
    readonly interval: number;
  },
): Finding[] {
  if (files.every(({ odd }) => odd.length === 0)) return [];
  const at = files.map(({ clock }) => new Int32Array(clock.length).fill(-1));
  written.row.forEach((row, place) => at[written.file[place]!]![row] = place);
  return files.flatMap(({ file, odd, lines }, f) =>
    odd.flatMap(({ sensor, kind, fromRow, toRow, cells, text }): Finding[] => {
      const [from, to] = [at[f]![fromRow]!, at[f]![toRow]!];
      if (from === -1 || to === -1) return [];
      const { sensor: { name }, column, unit } = logger.sensors[sensor]!;
      const place = describeLocation({ file, line: lines[fromRow]!, column });
      const more = cells === 1 ? "" : ` (${cells} cells up to line ${lines[toRow]})`;
      const [one, other] = [timeOf(from), timeOf(to)];
      return [{
        kind,
        channel: name,
        from: Math.min(one, other),
        to: Math.max(one, other) + interval,
        message: kind === "unreadable"
          ? `${place}: expected a number, found "${text}"${more}; taken as a gap`
          : `${place}: ${`${text} ${unit}`.trim()} cannot be true${more}; taken as a gap. ` +
            "Check the unit, or list the value as missing in the log map",
      }];
    })
  );
}
