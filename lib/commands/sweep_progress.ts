/** Progress over the rows of a sweep, with the time left. @module */
import { clearBarLine, terminalBar } from "./bar.ts";
import { complain } from "./terminal.ts";

/** Shows how far a sweep is. */
export interface RowProgress {
  /** A row is finished; `fault` says why it has no figures, "" where it has. */
  done(row: number, fault: string): void;
  /** Takes the bar away. */
  stop(): void;
}

/** s between two lines where there is no terminal */
const PAUSE = 10;

/** ", about 3 min left" from the rows finished in this run. */
export function timeLeftText(finished: number, left: number, spent: number): string {
  if (finished === 0 || left === 0) return "";
  const seconds = left * spent / finished;
  if (seconds < 90) return `, about ${Math.max(1, Math.round(seconds))} s left`;
  if (seconds < 5400) return `, about ${Math.round(seconds / 60)} min left`;
  return `, about ${(seconds / 3600).toFixed(1)} h left`;
}

/**
 * Progress on standard error: a bar when that is a terminal, otherwise a line now and then.
 *
 * @param total count of rows
 * @param there count of rows that were there already
 * @param now s, a clock
 */
export function showRows(
  total: number,
  there: number,
  now: () => number = () => performance.now() / 1000,
): RowProgress {
  const start = now();
  let finished = 0;
  let said = start;
  const left = () => timeLeftText(finished, total - there - finished, now() - start);
  if (there > 0) complain(`${there} of ${total} rows are there already`);
  if (!Deno.stderr.isTerminal()) {
    return {
      done: (row, fault) => {
        finished++;
        if (fault !== "") complain(`row ${row}: ${fault}`);
        if (now() - said < PAUSE && finished > 1) return;
        said = now();
        complain(`${there + finished} of ${total} rows${left()}`);
      },
      stop: () => {},
    };
  }
  const bar = terminalBar("{bar} {value}/{total} rows{left}");
  bar.start(total, there, { left: "" });
  return {
    done: (row, fault) => {
      finished++;
      if (fault !== "") {
        clearBarLine();
        complain(`row ${row}: ${fault}`);
      }
      bar.increment(1, { left: left() });
    },
    stop: () => bar.stop(),
  };
}
