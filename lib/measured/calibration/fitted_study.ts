/** A study file with fitted values in it, everything else as it was. @module */
import Papa from "papaparse";
import { isMap, isScalar, type Pair, parseDocument, type Scalar } from "yaml";
import { InputError } from "../../basics/mod.ts";
import type { Estimate } from "./estimate.ts";
import { roundToDecimals, roundToFigures } from "../../basics/round.ts";

/** What was known of a key before the log, in the unit of its estimate. */
export interface Prior {
  /** least value that would have been believed, in the unit of the estimate */
  readonly low: number;
  /** greatest value that would have been believed, in the same unit */
  readonly high: number;
}

/** A value that went into the study. */
export interface FittedKey {
  /** such as "house.leakage" */
  readonly key: string;
  /** text before; null where the default stood */
  readonly before: string | null;
  /** text now, with its unit */
  readonly after: string;
  /** what it came from */
  readonly estimate: Estimate;
}

/** An estimate that did not, and why. */
export interface LeftKey {
  /** what was to go in */
  readonly estimate: Estimate;
  /** why it stays out, a plain sentence */
  readonly reason: string;
}

/** The new study file. */
export interface FittedStudy {
  /** its text */
  readonly text: string;
  /** what changed */
  readonly changed: readonly FittedKey[];
  /** what the log cannot tell, so that the study's value stays */
  readonly left: readonly LeftKey[];
  /** all estimates with their intervals, as a table in CSV */
  readonly table: string;
}

/** decimals enough that the last two digits of the uncertainty show */
function rounded(value: number, uncertainty: number): string {
  if (!(uncertainty > 0) || !Number.isFinite(uncertainty)) {
    return String(roundToFigures(value, 4));
  }
  const decimals = Math.min(12, Math.max(0, 1 - Math.floor(Math.log10(uncertainty))));
  return String(roundToDecimals(value, decimals));
}

const withUnit = (number: string, unit: string) => unit === "" ? number : `${number} ${unit}`;

/** Why an estimate stays out; null where it goes in. */
function reasonAgainst(estimate: Estimate, prior: Prior | undefined, others: readonly Estimate[]) {
  const { key, value, low, high, name } = estimate;
  if (key === null) return "no key of the study takes it";
  if (![value, low, high].every(Number.isFinite)) return `these data do not identify ${name}`;
  if (others.some((one) => one !== estimate && one.key === key)) {
    return `two stages give ${key}; give the one that counts`;
  }
  if (prior === undefined) return null;
  if (high - low > prior.high - prior.low) {
    return `not identified: its interval is wider than what was known before (${
      rounded(prior.low, 0)
    } to ${rounded(prior.high, 0)})`;
  }
  if (value < prior.low || value > prior.high) {
    return `${rounded(value, estimate.standardUncertainty)} lies outside what can be believed (${
      rounded(prior.low, 0)
    } to ${rounded(prior.high, 0)}): look for a fault of the log before it is used`;
  }
  return null;
}

/**
 * Writes estimates into the text of a study file. Only the values change: comments, order, line breaks
 * and units of everything else stay as they were. Each fitted value carries its interval as a comment,
 * "measured: low to high, 95 %". Values that the data do not identify stay as they were.
 *
 * @param text of the study file
 * @param file its name, for messages
 * @param estimates with the keys that take them
 * @param priors by key, each in the unit of its estimate; without one only an infinite interval keeps a
 * value out
 * @throws InputError where the file is no YAML map
 */
export function fittedStudy(
  text: string,
  file: string,
  estimates: readonly Estimate[],
  priors: Readonly<Record<string, Prior>> = {},
): FittedStudy {
  const changed: FittedKey[] = [];
  const left: LeftKey[] = [];
  let now = text;
  for (const estimate of estimates) {
    const { key } = estimate;
    const reason = reasonAgainst(estimate, key === null ? undefined : priors[key], estimates);
    if (reason !== null) {
      left.push({ estimate, reason });
      continue;
    }
    const number = rounded(estimate.value, estimate.standardUncertainty);
    const after = withUnit(number, estimate.unit);
    const bound = (one: number) => rounded(one, estimate.standardUncertainty);
    const comment = `measured: ${bound(estimate.low)} to ${
      withUnit(bound(estimate.high), estimate.unit)
    }, 95 %`;
    const placed = place(now, file, key!.split("."), after, comment);
    now = placed.text;
    changed.push({ key: key!, before: placed.before, after, estimate });
  }
  return { text: now, changed, left, table: tableOf(changed, left) };
}

interface Placed {
  readonly text: string;
  readonly before: string | null;
}

/** Puts one value in its place. */
function place(
  text: string,
  file: string,
  path: readonly string[],
  value: string,
  comment: string,
): Placed {
  const document = parseDocument(text);
  if (document.errors.length > 0 || !isMap(document.contents)) {
    throw new InputError("Cannot write into the study: expected keys with values in YAML", {
      file,
    });
  }
  const node = document.getIn(path, true);
  if (isScalar(node) && node.range) return replace(text, node, value, comment);
  const parent = document.getIn(path.slice(0, -1), true);
  if (node !== undefined && node !== null) {
    throw new InputError(
      `Cannot write ${
        path.join(".")
      }: expected one value there; write one value for the year first`,
      { file },
    );
  }
  const name = path.at(-1)!;
  if (isMap(parent) && parent.items.length > 0) {
    if (parent.flow === true && parent.range) {
      const first = (parent.items[0]!.key as Scalar).range![0];
      return {
        text: `${text.slice(0, first)}${name}: ${value}, ${text.slice(first)}`,
        before: null,
      };
    }
    return { text: addLine(text, parent.items, `${name}: ${value} # ${comment}`), before: null };
  }
  if (path.length !== 2 || document.hasIn(path.slice(0, -1))) {
    throw new InputError(
      `Cannot write ${path.join(".")}: its section has no keys yet; add it by hand`,
      {
        file,
      },
    );
  }
  const end = text.endsWith("\n") || text === "" ? "" : "\n";
  return { text: `${text}${end}${path[0]}:\n  ${name}: ${value} # ${comment}\n`, before: null };
}

/** A value in place of another; what stands behind it on the line goes on behind the new comment. */
function replace(text: string, node: Scalar, value: string, comment: string): Placed {
  const [from, to] = node.range!;
  const before = text.slice(from, to);
  const lineEnd = text.indexOf("\n", to);
  const rest = text.slice(to, lineEnd < 0 ? text.length : lineEnd);
  const behind = text.slice(lineEnd < 0 ? text.length : lineEnd);
  const note = /^\s*#\s?(.*)$/.exec(rest);
  const old = note === null ? "" : note[1]!.replace(/^measured: [^;]*, 95 %(; )?/, "");
  // inside a flow map more keys may follow on the line: the comment would swallow them
  const tail = rest.trim() === "" || note !== null
    ? ` # ${comment}${old === "" ? "" : `; ${old}`}`
    : rest;
  return { text: text.slice(0, from) + value + tail + behind, before };
}

/** A line before the first key of a section, as far in as that. */
function addLine(text: string, items: readonly Pair[], line: string): string {
  const first = (items[0]!.key as Scalar).range![0];
  const indent = text.slice(text.lastIndexOf("\n", first - 1) + 1, first);
  return `${text.slice(0, first)}${line}\n${indent}${text.slice(first)}`;
}

/** Every estimate with its interval, and whether the study took it. */
function tableOf(changed: readonly FittedKey[], left: readonly LeftKey[]): string {
  const row = (estimate: Estimate, before: string | null, remark: string) => ({
    key: estimate.key ?? "",
    name: estimate.name,
    unit: estimate.unit,
    value: estimate.value,
    standard_uncertainty: estimate.standardUncertainty,
    low: estimate.low,
    high: estimate.high,
    before: before ?? "",
    remark,
  });
  return Papa.unparse([
    ...changed.map(({ estimate, before }) => row(estimate, before, "in the study")),
    ...left.map(({ estimate, reason }) => row(estimate, null, reason)),
  ], { newline: "\n" }) + "\n";
}
