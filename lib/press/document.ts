/** How every page of ours begins. @module */
import { escapeHtml } from "./markdown.ts";
import { policyElement } from "./policy.ts";

/** What the head of a page says. */
export interface PageHead {
  readonly title: string;
  /** its one style sheet */
  readonly style: string;
  /** its one program, to the byte; none where it has none */
  readonly script?: string | undefined;
}

/** A page that needs no other file, up to its body and the link that leads past what stands before it. */
export function documentStart({ title, style, script }: PageHead): string {
  const sheet = `\n${style}`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
${policyElement(sheet, script)}
<title>${escapeHtml(title)}</title>
<style>${sheet}</style>
</head>
<body>
<a class="skip" href="#content">Skip to content</a>
`;
}
