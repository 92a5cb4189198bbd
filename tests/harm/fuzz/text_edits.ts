/**
 * Faults that people, programs and cables bring into text files; long because each is a few lines and
 * they belong in one list.
 *
 * @module
 */
import type { Dice } from "./dice.ts";

/** A change of a text. `other` is another file of the same kind. */
export type TextEdit = (text: string, dice: Dice, other: string) => string;

const ODD_NUMBERS = [
  "NaN",
  "nan",
  "Infinity",
  "-Infinity",
  ".inf",
  "-.inf",
  ".nan",
  "1e308",
  "-1e308",
  "1e999",
  "1e-400",
  "5e-324",
  "9007199254740993",
  "99999999999999999999999",
  "-0",
  "-1",
  "0",
  "00012",
  "0x1F",
  "0b11",
  "0o17",
  "1_000",
  "1,5",
  "1.234,5",
  "1 000",
  "1\u00a0000",
  "1'000",
  "½",
  "١٢",
  "１２",
  "−5",
  "+-3",
  "--",
  "-",
  ".",
  "e",
  "1e",
  "1e5",
  "1/0",
  "12:30",
  "1:2:3",
  "2001-02-30",
  "null",
  "~",
  "true",
  "no",
  "",
  " ",
  '""',
  "12 m",
  "12m",
  "1 m 2",
  "999",
  "-999",
  "-9999",
  "9999.9",
  "1e-3",
];
const ODD_SIGNS = [
  "\0",
  "\u0007",
  "\u001b[31m",
  "\u001b]0;x\u0007",
  "\b",
  "\u200b",
  "\ufeff",
  "\u202e",
  "\u2028",
  "\u2029",
  "\u00a0",
  "\u0085",
  "\v",
  "\f",
  "\t",
  "−",
  "–",
  "；",
  "，",
  "：",
  "．",
  '"',
  "'",
  "`",
  ";",
  ",",
  ":",
  "#",
  "|",
  "&",
  "*",
  "!",
  "%",
  "@",
  "{",
  "}",
  "[",
  "]",
  "<",
  ">",
  "=",
  "\\",
  "/",
  "$",
  "😀",
  "e\u0301",
  "\ud83d",
  "İ",
  "ß",
  "\r",
  "\n",
  "\r\n",
];
const LOOK_ALIKES: Readonly<Record<string, string>> = {
  a: "а",
  c: "с",
  e: "е",
  i: "і",
  o: "о",
  p: "р",
  x: "х",
  y: "у",
  "-": "‐",
  ".": "․",
  ":": "∶",
  ",": "‚",
};
const YAML_PIECES = [
  "---\n",
  "...\n",
  "%YAML 1.1\n",
  "%TAG ! tag:x:\n",
  "*nowhere",
  "&a *a",
  "&a [*a]",
  "<<: *a\n",
  "!!js/function 'x'",
  "!!binary AAAA",
  "!!set {a}",
  "!<tag:x> y",
  "? {a: b}\n: c\n",
  "? a\n",
  "|\n x\n",
  ">+\n",
  "[",
  "{",
  "]",
  "}",
  "[]",
  "{}",
  "[,]",
  "{a}",
  "- ",
  "\t",
  "__proto__: {a: 1}\n",
  "constructor: 3\n",
  "toString: x\n",
  "hasOwnProperty: no\n",
  "length: 3\n",
  "0: 1\n",
  "null: 2\n",
  "~: 2\n",
  "? [a, b]\n: c\n",
  "a: &x {b: *x}\n",
  "'",
  '"\\u0000"',
  '"\\x"',
  "2001-01-01",
  "0o7",
  "y",
];

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return starts;
}

/** Changes one line; the head of the file more often than chance would. */
function withLine(text: string, dice: Dice, change: (line: string) => string): string {
  const starts = lineStarts(text);
  const last = starts.length - 1;
  const row = dice.whole(0, dice.percent(40) ? Math.min(last, 4) : last);
  const from = starts[row]!;
  const to = row === last ? text.length : starts[row + 1]! - 1;
  return text.slice(0, from) + change(text.slice(from, to)) + text.slice(to);
}

function delimiterOf(line: string): string {
  return [",", ";", "\t"].find((sign) => line.includes(sign)) ?? " ";
}

function withCells(
  text: string,
  dice: Dice,
  change: (cells: string[]) => string[],
): string {
  return withLine(text, dice, (line) => {
    const delimiter = delimiterOf(line);
    return change(line.split(delimiter)).join(delimiter);
  });
}

/** Every line's cells changed alike. */
function withEveryRow(text: string, change: (cells: string[]) => string[]): string {
  return text.split("\n").map((line) => {
    const delimiter = delimiterOf(line);
    return line === "" ? line : change(line.split(delimiter)).join(delimiter);
  }).join("\n");
}

function place(text: string, dice: Dice): number {
  return dice.whole(0, dice.percent(30) ? Math.min(text.length, 300) : text.length);
}

function insert(text: string, dice: Dice, piece: string): string {
  const at = place(text, dice);
  return text.slice(0, at) + piece + text.slice(at);
}

function swapped<T>(list: T[], dice: Dice): T[] {
  const [one, other] = [dice.whole(0, list.length - 1), dice.whole(0, list.length - 1)];
  [list[one], list[other]] = [list[other]!, list[one]!];
  return list;
}

/** Replaces one match of a pattern, from a place on. */
function replaceOne(
  text: string,
  dice: Dice,
  pattern: RegExp,
  change: (found: string) => string,
): string {
  const from = place(text, dice);
  pattern.lastIndex = from;
  const found = pattern.exec(text);
  if (found === null) return text;
  const end = found.index + found[0].length;
  return text.slice(0, found.index) + change(found[0]) + text.slice(end);
}

const NUMBER = /-?\d+(?:\.\d+)?/g;
const WORD = /[A-Za-zµ²³/%]+/g;

function anyWord(text: string, dice: Dice): string {
  let word = "";
  replaceOne(text, dice, new RegExp(WORD), (found) => word = found);
  return word;
}

/** All of them, by name. */
export const TEXT_EDITS: Readonly<Record<string, TextEdit>> = {
  "line lost": (text, dice) => withLine(text, dice, () => ""),
  "line doubled": (text, dice) => withLine(text, dice, (line) => `${line}\n${line}`),
  "line cut": (text, dice) => withLine(text, dice, (line) => line.slice(0, place(line, dice))),
  "lines joined": (text, dice) => replaceOne(text, dice, /\n/g, () => dice.pick(["", " ", ","])),
  "lines swapped": (text, dice) => swapped(text.split("\n"), dice).join("\n"),
  "lines lost": (text, dice) => {
    const [from, to] = [place(text, dice), place(text, dice)].sort((a, b) => a - b);
    return text.slice(0, from) + text.slice(to);
  },
  "piece doubled": (text, dice) => {
    const from = place(text, dice);
    return insert(text, dice, text.slice(from, from + dice.whole(1, 20_000)));
  },
  "piece of another file": (text, dice, other) => {
    const from = place(other, dice);
    return insert(text, dice, other.slice(from, from + dice.whole(1, 2000)));
  },
  "end of another file": (text, dice, other) =>
    text.slice(0, place(text, dice)) + other.slice(place(other, dice)),
  "cell lost": (text, dice) =>
    withCells(text, dice, (cells) => cells.toSpliced(dice.whole(0, cells.length - 1), 1)),
  "cell added": (text, dice) =>
    withCells(text, dice, (cells) => cells.toSpliced(dice.whole(0, cells.length), 0, "7")),
  "cells swapped": (text, dice) => withCells(text, dice, (cells) => swapped(cells, dice)),
  "cell changed": (text, dice) =>
    withCells(text, dice, (cells) => {
      cells[dice.whole(0, cells.length - 1)] = dice.pick(ODD_NUMBERS);
      return cells;
    }),
  "head doubled": (text, dice) => {
    const end = text.indexOf("\n");
    const head = end === -1 ? text : text.slice(0, end);
    const cells = head.split(delimiterOf(head));
    const from = dice.pick(cells);
    cells[dice.whole(0, cells.length - 1)] = from;
    return cells.join(delimiterOf(head)) + (end === -1 ? "" : text.slice(end));
  },
  "columns swapped": (text, dice) => {
    const [one, other] = [dice.whole(0, 9), dice.whole(0, 9)];
    return withEveryRow(text, (cells) => {
      if (Math.max(one, other) >= cells.length) return cells;
      [cells[one], cells[other]] = [cells[other]!, cells[one]!];
      return cells;
    });
  },
  "column of one value": (text, dice) => {
    const [column, value] = [dice.whole(0, 9), dice.pick(ODD_NUMBERS)];
    return withEveryRow(text, (cells) => {
      if (column < cells.length && /\d/.test(cells[column]!)) cells[column] = value;
      return cells;
    });
  },
  "column lost": (text, dice) => {
    const column = dice.whole(0, 9);
    return withEveryRow(text, (cells) => cells.toSpliced(column, 1));
  },
  "number changed": (text, dice) =>
    replaceOne(text, dice, new RegExp(NUMBER), () => dice.pick(ODD_NUMBERS)),
  "number scaled": (text, dice) =>
    replaceOne(
      text,
      dice,
      new RegExp(NUMBER),
      (found) =>
        dice.pick([`-${found}`, `${found}00000`, `${found}e9`, `0.000${found}`, `${found}e-12`]),
    ),
  "many numbers changed": (text, dice) => {
    const [one, value] = [dice.whole(2, 40), dice.pick(ODD_NUMBERS)];
    let count = 0;
    return text.replace(NUMBER, (found) => ++count % one === 0 ? value : found);
  },
  "decimal commas": (text) => text.replace(/(\d)\.(\d)/g, "$1,$2"),
  "decimal commas and semicolons": (text) =>
    text.replaceAll(",", ";").replace(/(\d)\.(\d)/g, "$1,$2"),
  "other delimiter": (text, dice) => text.replaceAll(",", dice.pick([";", "\t", "|", " ", ""])),
  "word changed": (text, dice) =>
    replaceOne(text, dice, new RegExp(WORD), () => anyWord(text, dice)),
  "look-alike": (text, dice) =>
    replaceOne(text, dice, /[aceiopxy:,.-]/g, (found) => LOOK_ALIKES[found] ?? found),
  "other case": (text, dice) =>
    replaceOne(text, dice, new RegExp(WORD), (found) => found.toUpperCase()),
  "odd sign": (text, dice) => insert(text, dice, dice.pick(ODD_SIGNS)),
  "odd signs": (text, dice) => {
    const sign = dice.pick(ODD_SIGNS);
    return Array.from({ length: 30 }).reduce<string>((so) => insert(so, dice, sign), text);
  },
  "quote opened": (text, dice) => insert(text, dice, dice.pick(['"', "'", ',"', '""'])),
  "very long line": (text, dice) =>
    insert(text, dice, dice.pick(["7", "x", ",", " ", "1,", '"', "[", "-"]).repeat(100_000)),
  "line ends": (text, dice) => {
    const ends = dice.pick([["\r\n"], ["\r"], ["\r\n", "\n", "\r"], ["\n\n"], ["\n\r"], [
      "\u2028",
    ]]);
    return text.split("\n").reduce((so, line) => so + dice.pick(ends) + line);
  },
  "blanks": (text, dice) =>
    withLine(
      text,
      dice,
      (line) => dice.pick([` ${line}`, `${line}   `, `\t${line}`, `    ${line}`]),
    ),
  "remark": (text, dice) => withLine(text, dice, (line) => `# ${line}`),
  "key twice": (text, dice) =>
    withLine(text, dice, (line) => `${line}\n${line.replace(/:.*/, ": 3")}`),
  "value gone": (text, dice) => withLine(text, dice, (line) => line.replace(/:.*/, ":")),
  "value a list": (text, dice) => withLine(text, dice, (line) => line.replace(/: *(.*)/, ": [$1]")),
  "value a section": (text, dice) =>
    withLine(text, dice, (line) => line.replace(/: *(.*)/, ": {a: $1}")),
  "value odd": (text, dice) =>
    withLine(text, dice, (line) => line.replace(/:.*/, () => `: ${dice.pick(ODD_NUMBERS)}`)),
  "syntax": (text, dice) => insert(text, dice, dice.pick(YAML_PIECES)),
  "syntax line": (text, dice) => withLine(text, dice, (line) => dice.pick(YAML_PIECES) + line),
  "deep": (text, dice) => {
    const depth = dice.pick([50, 1000, 10_000, 100_000]);
    const [open, close] = dice.pick([["[", "]"], ["{a: ", "}"], ["[", ""], ["- ", ""], [
      '{"a":',
      "}",
    ]]);
    const piece = `${open!.repeat(depth)}1${close!.repeat(depth)}`;
    return withLine(text, dice, (line) => line.replace(/:.*/, "") + ": " + piece);
  },
  "aliases": (text, dice) => {
    const lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x]"];
    for (let k = 1; k < dice.whole(2, 12); k++) {
      lines.push(`a${k}: &a${k} [${Array(9).fill(`*a${k - 1}`).join(", ")}]`);
    }
    return dice.percent(50) ? `${lines.join("\n")}\n${text}` : `${text}\n${lines.join("\n")}\n`;
  },
  "nothing": (text) => text,
};
