/**
 * Code as HTML with its words marked by kind, when the page is made: a reader's browser runs nothing.
 *
 * @module
 */
import hljs from "highlight.js/lib/core";
import bash from "highlight.js/lib/languages/bash";
import json from "highlight.js/lib/languages/json";
import typescript from "highlight.js/lib/languages/typescript";
import yaml from "highlight.js/lib/languages/yaml";
import { escapeHtml } from "../markdown.ts";

hljs.registerLanguage("ts", typescript);
hljs.registerLanguage("yaml", yaml);
hljs.registerLanguage("json", json);
hljs.registerLanguage("sh", bash);

/**
 * Marks comments, words of the language, texts and numbers.
 *
 * @param code as written
 * @param language such as "ts"; a language that is not known is left unmarked
 */
export function highlight(code: string, language: string): string {
  if (hljs.getLanguage(language) === undefined) return escapeHtml(code);
  return hljs.highlight(code, { language, ignoreIllegals: true }).value;
}
