/**
 * What every command does at its start and end: help, messages, exit status, and cleaning up when
 * it is interrupted.
 *
 * Exit status: 0 done, 1 could not be done, 2 wrong use or bad input, 128 + number of the signal
 * when interrupted.
 *
 * @module
 */
import { fileURLToPath } from "node:url";
import { InputError, readable } from "../basics/mod.ts";
import { diskWords } from "./output/disk_words.ts";
import { type CommandLine, type CommandSpec, helpText, readCommandLine } from "./command_line.ts";

/** Folder of the project. */
export const PROJECT_FOLDER: string = fileURLToPath(new URL("../../", import.meta.url));

/** A command that could not be done: its message is printed as it stands. */
export class CommandFailure extends Error {
  override name = "CommandFailure";
  /** exit status */
  readonly status: number;
  constructor(message: string, status = 1) {
    super(message);
    this.status = status;
  }
}

/** Prints a line on standard output; signs in it that a terminal would obey are written as codes. */
export function say(line: string): void {
  Deno.stdout.writeSync(new TextEncoder().encode(`${readable(line)}\n`));
}

/** Prints a line on standard error, as {@link say} does. */
export function complain(line: string): void {
  Deno.stderr.writeSync(new TextEncoder().encode(`${readable(line)}\n`));
}

/** What a command does: gets its command line and a signal that is aborted when it must stop. */
export type CommandBody = (line: CommandLine, signal: AbortSignal) => Promise<number | void>;

/**
 * Runs a command and ends the program with its exit status. File names on the command line are
 * taken from the folder the person called it in, although tasks start in the project folder.
 *
 * @param spec what the command understands
 * @param body what it does; gives its exit status, 0 when nothing is given
 */
export async function runCommand(spec: CommandSpec, body: CommandBody): Promise<never> {
  const stop = new AbortController();
  let signalStatus = 0;
  for (const [name, number] of [["SIGINT", 2], ["SIGTERM", 15], ["SIGHUP", 1]] as const) {
    if (Deno.build.os === "windows" && name === "SIGTERM") continue;
    Deno.addSignalListener(name, () => {
      signalStatus = 128 + number;
      stop.abort(new CommandFailure("interrupted"));
    });
  }
  const starter = Deno.ppid;
  const watch = setInterval(() => {
    if (Deno.ppid === starter) return;
    signalStatus = 128 + 1;
    stop.abort(new CommandFailure("stopped: the parent program has ended"));
  }, 1000);
  Deno.unrefTimer(watch);
  let status: number;
  try {
    const line = readCommandLine(spec, Deno.args);
    if (line.help) {
      say(helpText(spec).trimEnd());
      Deno.exit(0);
    }
    const caller = Deno.env.get("INIT_CWD");
    if (caller !== undefined && caller !== "") Deno.chdir(caller);
    status = await body(line, stop.signal) ?? 0;
  } catch (error) {
    status = stop.signal.aborted ? report(stop.signal.reason) : report(error);
  }
  Deno.exit(signalStatus || status);
}

/** Prints what went wrong; gives the exit status. */
function report(error: unknown): number {
  if (error instanceof CommandFailure) {
    if (error.message !== "") complain(error.message);
    return error.status;
  }
  if (error instanceof InputError) {
    complain(error.message);
    return 2;
  }
  const disk = diskWords(error);
  if (disk !== null) {
    complain(`Cannot go on: ${disk}${placeOf(error)}; what was finished is kept`);
    return 1;
  }
  complain(error instanceof Error ? `${error.name}: ${error.message}` : String(error));
  return 1;
}

/** The file that a fault of the file system names. */
function placeOf(error: unknown): string {
  const found = /: \w+ '([^']+)'/.exec(error instanceof Error ? error.message : "");
  return found === null ? "" : ` (${found[1]})`;
}
