/** The page of every key of the study file, made from the table of fields. @module */
import { CHAPTERS } from "../chapters.ts";
import { type FieldRow, FIELDS } from "./fields.ts";

const HEAD = `# Keys of the study file

Every key with its default, limits and meaning. This page is generated from
\`data/studies/fields.csv\` by \`deno task reference\`; [study-file.md](study-file.md) says how values
are written. A value outside its limits is refused; one outside the usual range is accepted
with a notice.
`;

/** Titles of sections that belong to no chapter. */
const FRAME = ["study", "place"];

/** Markdown of docs/keys.md. */
export function keysPage(): string {
  const sections = [...FRAME, ...CHAPTERS.map(({ name }) => name)];
  return [HEAD, ...sections.map(sectionText)].join("\n");
}

function sectionText(section: string): string {
  const rows = [...FIELDS.values()].filter(({ key }) => key.startsWith(`${section}.`));
  return [
    `## ${section}\n`,
    "| key | what it is | default | limits | usual | source of the default |",
    "| --- | --- | --- | --- | --- | --- |",
    ...rows.map((row) => `| ${cells(row).map(escaped).join(" | ")} |`),
    "",
  ].join("\n");
}

function cells(row: FieldRow): readonly string[] {
  return [
    `\`${row.key}\``,
    row.meaning,
    row.default,
    range(row.least, row.most),
    range(row.usualLeast, row.usualMost),
    row.source,
  ];
}

function range(low: string, high: string): string {
  if (low === "" && high === "") return "";
  if (high === "") return `from ${low}`;
  return low === "" ? `to ${high}` : `${low} to ${high}`;
}

function escaped(text: string): string {
  return text.replaceAll("|", "\\|").replaceAll("<", "&lt;");
}
