/**
 * Progress over notebooks and cells: a bar on a terminal, plain lines elsewhere.
 *
 * @module
 */
import cliProgress from "cli-progress";
import { complain } from "./terminal.ts";

/** Shows how far a list of notebooks is. */
export interface Progress {
  /** A notebook starts. */
  start(name: string, cells: number): void;
  /** So many of its cells are done. */
  cell(done: number): void;
  /** The notebook is done. */
  done(): void;
  /** Takes the bar away, so that messages can be printed. */
  stop(): void;
}

/** Progress on standard error: a bar when that is a terminal, otherwise a line a notebook. */
export function showProgress(notebooks: number): Progress {
  return Deno.stderr.isTerminal() ? progressBar(notebooks) : progressLines(notebooks);
}

function progressBar(notebooks: number): Progress {
  const bar = new cliProgress.SingleBar({
    format: "{bar} notebook {number}/{notebooks} {name}  cell {value}/{total}",
    barsize: 24,
    hideCursor: true,
    gracefulExit: false,
    stopOnComplete: false,
    clearOnComplete: true,
  }, cliProgress.Presets.shades_classic);
  let number = 0;
  return {
    start(name, cells) {
      number++;
      if (number === 1) bar.start(cells, 0, { number, notebooks, name });
      else {
        bar.setTotal(cells);
        bar.update(0, { number, notebooks, name });
      }
    },
    cell: (done) => bar.update(done),
    done: () => {},
    stop: () => bar.stop(),
  };
}

function progressLines(notebooks: number): Progress {
  let number = 0;
  let current = "";
  let total = 0;
  let shown = 0;
  return {
    start(name, cells) {
      number++;
      current = name;
      total = cells;
      shown = 0;
      complain(`[${number}/${notebooks}] ${name}: ${cells} cells`);
    },
    cell(done) {
      const quarter = Math.floor(4 * done / Math.max(1, total));
      if (quarter > shown && done < total) {
        complain(`[${number}/${notebooks}] ${current}: cell ${done} of ${total} done`);
      }
      shown = quarter;
    },
    done: () => complain(`[${number}/${notebooks}] ${current}: done`),
    stop: () => {},
  };
}
