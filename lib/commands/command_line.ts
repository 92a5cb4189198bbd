/**
 * Reads a command line against a short description of the command, and prints its help.
 *
 * @module
 */
import { closest, distance } from "fastest-levenshtein";
import { parseArgs } from "node:util";
import { InputError } from "../basics/mod.ts";

/** One option of a command. */
export interface OptionSpec {
  /** name without the dashes */
  readonly name: string;
  /** word for the value in the help; absent for switches */
  readonly value?: string;
  /** what it does */
  readonly meaning: string;
}

/** What a command understands. */
export interface CommandSpec {
  /** name of the task */
  readonly name: string;
  /** what the command does */
  readonly summary: string;
  /** words for the arguments in the help, such as "[STUDY.yaml]" */
  readonly args: string;
  /** how many arguments it takes at least */
  readonly minArgs: number;
  /** how many arguments it takes at most */
  readonly maxArgs: number;
  /** the options, without `--help` */
  readonly options: readonly OptionSpec[];
  /** lines below the options */
  readonly notes?: readonly string[];
}

/** A command line that was understood. */
export interface CommandLine {
  /** values by option name */
  readonly values: Readonly<Record<string, string>>;
  /** switches that were set */
  readonly switches: ReadonlySet<string>;
  /** arguments in order */
  readonly args: readonly string[];
  /** true when help was asked for */
  readonly help: boolean;
}

/** Longest word of a command line, characters: paths are no longer anywhere. */
const LONGEST_WORD = 4096;

const HELP: OptionSpec = { name: "help", meaning: "print this help" };

/**
 * Reads the words after the command.
 *
 * @throws {InputError} for an unknown option (naming the nearest known one), a missing value, or a
 * wrong number of arguments
 */
export function readCommandLine(spec: CommandSpec, words: readonly string[]): CommandLine {
  const long = words.find((word) => word.length > LONGEST_WORD);
  if (long !== undefined) {
    throw new InputError(
      `Cannot use "${long.slice(0, 40)}…": it has ${long.length} characters, expected at most ` +
        `${LONGEST_WORD}`,
    );
  }
  const known = [...spec.options, HELP];
  const options = Object.fromEntries(
    known.map((option) => [
      option.name,
      { type: option.value === undefined ? "boolean" as const : "string" as const },
    ]),
  );
  const { tokens } = parseArgs({
    args: [...words],
    options: { ...options, help: { type: "boolean", short: "h" } },
    strict: false,
    tokens: true,
    allowPositionals: true,
  });
  const values: Record<string, string> = {};
  const switches = new Set<string>();
  const args: string[] = [];
  for (const token of tokens) {
    if (token.kind === "positional") args.push(token.value);
    if (token.kind !== "option") continue;
    const option = known.find((candidate) => candidate.name === token.name);
    if (option === undefined) throw unknownOption(token.rawName, known);
    const value = typeof token.value === "string" ? token.value : undefined;
    if (option.value === undefined) {
      if (value !== undefined) {
        throw new InputError(`Option --${option.name} does not take a value`);
      }
      switches.add(option.name);
    } else if (value === undefined || value === "" || (!token.inlineValue && isOption(value))) {
      throw new InputError(
        `Option --${option.name} needs a value: --${option.name} ${option.value}`,
      );
    } else values[option.name] = value;
  }
  const help = switches.has("help");
  if (!help && (args.length < spec.minArgs || args.length > spec.maxArgs)) {
    throw new InputError(
      `Wrong number of arguments: got ${args.length}; usage: ${usage(spec)}`,
    );
  }
  return { values, switches, args, help };
}

/** True for words that look like an option; a lone dash and negative numbers do not. */
function isOption(word: string): boolean {
  return /^--?[a-zA-Z]/.test(word);
}

function unknownOption(given: string, known: readonly OptionSpec[]): InputError {
  const names = known.map((option) => `--${option.name}`);
  const near = closest(given, names);
  const hint = distance(given, near) <= Math.max(2, Math.ceil(near.length / 3))
    ? `did you mean "${near}"?`
    : `known options: ${names.join(", ")}`;
  return new InputError(`Unknown option "${given}": ${hint}`);
}

function usage(spec: CommandSpec): string {
  const options = spec.options.length > 0 ? " [options]" : "";
  return `deno task ${spec.name}${spec.args === "" ? "" : ` ${spec.args}`}${options}`;
}

/** Text of `--help`. */
export function helpText(spec: CommandSpec): string {
  const rows = [...spec.options, HELP].map((option) => [
    `  --${option.name}${option.value === undefined ? "" : ` ${option.value}`}`,
    option.meaning,
  ]);
  const width = Math.max(...rows.map((row) => row[0]!.length)) + 2;
  const lines = rows.map(([name, meaning]) => `${name!.padEnd(width)}${meaning}`);
  const notes = spec.notes === undefined ? [] : ["", ...spec.notes];
  return [spec.summary, "", `usage: ${usage(spec)}`, "", ...lines, ...notes, ""].join("\n");
}
