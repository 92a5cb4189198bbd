/** The page of what was tried and what happened. @module */

/** One attack. */
export interface AttackRow {
  /** what was attacked, or how */
  readonly attack: string;
  /** how often */
  readonly tried: number;
  /** seeds of the inputs; "" where there are none */
  readonly seeds: string;
  /** how often it did not end as it must */
  readonly found: number;
  /** what happened */
  readonly words: string;
}

/** What the page is made from. */
export interface PageInput {
  readonly readers: readonly AttackRow[];
  readonly others: readonly AttackRow[];
  /** day, YYYY-MM-DD */
  readonly date: string;
  /** short hash */
  readonly commit: string;
  /** true where the library was changed after that commit */
  readonly changed: boolean;
  /** what was run */
  readonly command: string;
  readonly minutes: number;
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = heads.map((head, place) =>
    Math.max(head.length, ...rows.map((row) => row[place]!.length))
  );
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell, place) => cell.padEnd(widths[place]!)).join(" | ")} |`;
  return [line(heads), line(widths.map((width) => "-".repeat(width))), ...rows.map(line)].join(
    "\n",
  );
}

const cells = ({ attack, tried, seeds, found, words }: AttackRow) =>
  [attack, String(tried), seeds, String(found), words].map((cell) => cell.replaceAll("|", "\\|"));

/** Text of docs/reliability.md. */
export function reliabilityPage(input: PageInput): string {
  const { readers, others, date, commit, changed, command, minutes } = input;
  const tried = readers.reduce((sum, row) => sum + row.tried, 0);
  const found = [...readers, ...others].reduce((sum, row) => sum + row.found, 0);
  return `# Reliability

What the library does with broken files, dying processes, full disks and hostile texts. This page is
written by \`deno task harm\` from its own measurements; a part of the same attacks runs with every
\`deno task test\` (\`tests/harm/\`).

Last run: ${date}, commit ${commit}${changed ? " with changes" : ""}, \`${command}\`, ${
    Math.round(minutes)
  } minutes beside other work. Found: ${found}.

## Broken files

${tried} inputs, each a sound file (the demo's, the project's, and open data where they are there) with
one to four faults brought in: bytes and bits changed, ends lost, lines, cells and columns lost,
doubled or swapped, odd numbers, decimal commas, other encodings and line ends, quotes left open,
look-alike letters, very long lines, brackets without end, aliases, keys that mean something to the
language. A reader must give sound values, or refuse in plain words with the file: "found" counts
every other error, every value that is not finite, every message without its file, with a word of
the machine's, or longer than a person reads. An input that fails is reduced and printed with its
seed.

${table(["reader", "tried", "seeds", "found", "what happened"], readers.map(cells))}

## Stages, texts and outputs

${table(["attack", "tried", "seeds", "found", "what happened"], others.map(cells))}

## What is not tried

A power cut (files are synced, but no power was cut), network disks, Windows, files that change while
they are read, and more than two runs at once.
`;
}
