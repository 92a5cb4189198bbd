/** The page of what was tried and what happened; each row says when, and keeps until it is tried again. @module */

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
  /** day, YYYY-MM-DD, and commit */
  readonly when: string;
}

const HEADS = ["attack", "tried", "seeds", "found", "what happened", "when"];

/** A stage of the work and the attacks on it, in the order of {@link WAYS}; "" where there is nothing to do. */
export interface StageAttacks {
  readonly stage: string;
  readonly attacks: readonly string[];
}

/** Ways in which a stage is cut off. */
const WAYS = [
  "SIGINT, SIGTERM",
  "kill -9 at any call",
  "two at once",
  "full disk",
  "read-only disk",
  "clock set",
];

/** Each stage with what came of it by the rows above. */
function stageTable(stages: readonly StageAttacks[], rows: readonly AttackRow[]): string {
  const word = (attack: string): string => {
    if (attack === "") return "–";
    const row = rows.find((one) => one.attack === attack);
    return row === undefined ? "not tried" : row.found === 0 ? "held" : "did not hold";
  };
  return table(stages.map(({ stage, attacks }) => [stage, ...attacks.map(word)]), [
    "stage",
    ...WAYS,
  ]);
}

function table(
  rows: readonly (readonly string[])[],
  heads: readonly string[] = HEADS,
): string {
  const widths = heads.map((head, place) =>
    Math.max(head.length, ...rows.map((row) => row[place]!.length))
  );
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell, place) => cell.padEnd(widths[place]!)).join(" | ")} |`;
  return [line(heads), line(widths.map((width) => "-".repeat(width))), ...rows.map(line)].join(
    "\n",
  );
}

const cells = ({ attack, tried, seeds, found, words, when }: AttackRow) =>
  [attack, String(tried), seeds, String(found), words, when]
    .map((cell) => cell.replaceAll("|", "/"));

/** Rows of a page that was written before. */
export function rowsOfPage(page: string): AttackRow[] {
  return page.split("\n## By stage")[0]!.split("\n").filter((line) => line.startsWith("| "))
    .map((line) => line.slice(2, -2).split(" | ").map((cell) => cell.trim()))
    .filter(([attack]) => attack !== HEADS[0] && !attack!.startsWith("---"))
    .map(([attack, tried, seeds, found, words, when]) => ({
      attack: attack!,
      tried: Number(tried),
      seeds: seeds!,
      found: Number(found),
      words: words!,
      when: when!,
    }));
}

/** Old rows with the new ones in their places; new attacks follow. */
export function withRows(old: readonly AttackRow[], fresh: readonly AttackRow[]): AttackRow[] {
  const added = fresh.filter(({ attack }) => old.every((row) => row.attack !== attack));
  return [...old.map((row) => fresh.find(({ attack }) => attack === row.attack) ?? row), ...added];
}

/**
 * Text of docs/reliability.md.
 *
 * @param rows all attacks
 * @param readers names of the readers under attack
 * @param stages stages of the work and the attacks on each
 */
export function reliabilityPage(
  rows: readonly AttackRow[],
  readers: ReadonlySet<string>,
  stages: readonly StageAttacks[],
): string {
  const files = rows.filter(({ attack }) => readers.has(attack));
  const others = rows.filter(({ attack }) => !readers.has(attack));
  const tried = files.reduce((sum, row) => sum + row.tried, 0);
  return `# Reliability

What the library does with broken files, dying processes, full disks and hostile texts. The tables are
written by \`deno task harm\` from its own measurements; a part of the same attacks runs with every
\`deno task test\` (\`tests/harm/\`). Attacks are called with \`--only WORDS\`; \`--count\` and \`--seed\` say
how many broken files are tried and which. A \`+\` after the commit: with changes that were not
committed.

The part in \`deno task test\` took 2 min 19 s of processor time on 26 November 2026 (\`tests/harm/\` and
the killed runs of \`tests/commands/output/\`, counted by the system's \`time\`).

## Broken files

${tried} inputs, each a sound file (the demo's, the project's, and open data where they are there) with
one to four faults brought in: bytes and bits changed, ends lost, lines, cells and columns lost,
doubled or swapped, odd numbers, decimal commas, other encodings and line ends, quotes left open,
look-alike letters, very long lines, brackets without end, aliases, keys that mean something to the
language. A reader must give sound values, or refuse in plain words with the file: \`found\` counts
every other error, every value that is not finite, everything printed, every message without its
file, with a word of the machine's, or longer than a person reads. An input that fails is reduced and
printed with its seed. Times are those of a machine busy with other work, and only tell which input
was slowest.

${table(files.map(cells))}

## Stages, texts and outputs

${table(others.map(cells))}

## By stage

\`–\`: the stage writes nothing that could be cut off that way.

${stageTable(stages, rows)}

## What is not tried

A power cut (finished rows are synced to the disk, but no power was cut), network disks, Windows,
files that change while they are read, more than two runs at once.
`;
}
