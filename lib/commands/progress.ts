/**
 * Progress over the pieces of a study, results and notebooks, with the time left: a bar on a terminal,
 * plain lines elsewhere.
 *
 * @module
 */
import { clearBarLine, terminalBar } from "./bar.ts";
import { complain, say } from "./terminal.ts";
import { type TimeLeft, timeLeft } from "./time_left.ts";

/** Shows how far a study is. */
export interface Progress {
  /** A piece is done; `instant` where it was there already. */
  done(piece: string, instant?: boolean): void;
  /** So many parts of a piece are done, of those asked for so far. */
  part(piece: string, done: number, asked: number): void;
  /** Shows a line of results above the bar. */
  show(line: string): void;
  /** Takes the bar away, so that messages can be printed. */
  stop(): void;
}

/**
 * Progress on standard error: a bar when that is a terminal, otherwise a line for each notebook and each heavy result.
 *
 * @param pieces names of results and notebooks
 */
export function showProgress(pieces: readonly string[]): Progress {
  const left = timeLeft(pieces);
  return Deno.stderr.isTerminal() ? progressBar(pieces, left) : progressLines(pieces, left);
}

/** True for a notebook, whose name starts with its number, and for a lesson. */
function isNotebook(piece: string): boolean {
  return /^(?:\d|lesson-)/.test(piece);
}

function progressBar(pieces: readonly string[], left: TimeLeft): Progress {
  const bar = terminalBar("{bar} {value}/{total} {piece} done{left}");
  bar.start(pieces.length, 0, { piece: "0", left: "" });
  return {
    done: (piece, instant) => {
      left.done(piece, instant);
      bar.increment(1, { piece, left: left.text() });
    },
    part: (piece, done, asked) => {
      if (!left.part(piece, done, asked)) return;
      bar.update({ piece: `${piece} ${done}/${asked}`, left: left.text() });
    },
    show: (line) => {
      clearBarLine();
      say(line);
    },
    stop: () => bar.stop(),
  };
}

function progressLines(pieces: readonly string[], left: TimeLeft): Progress {
  const notebooks = pieces.filter(isNotebook).length;
  let number = 0;
  return {
    done: (piece, instant) => {
      left.done(piece, instant);
      if (isNotebook(piece)) complain(`[${++number}/${notebooks}] ${piece}: done${left.text()}`);
      else if (!instant && left.heavy(piece)) complain(`${piece}: computed${left.text()}`);
    },
    part: (piece, done, asked) => {
      if (!left.part(piece, done, asked) || done === asked) return;
      complain(`${piece}: ${done} of ${asked} parts${left.text()}`);
    },
    show: say,
    stop: () => {},
  };
}
