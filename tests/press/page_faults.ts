/** What a page must not hold, whatever its policy, and what its policy must say. @module */
import { createHash } from "node:crypto";
import { parseHTML } from "linkedom";

/** Elements that load, run, send or redirect, and that no page of ours needs. */
const FORBIDDEN = "script, iframe, frame, object, embed, applet, base, form, input, button, " +
  "textarea, select, link, portal, foreignObject, animate, set, video, audio, source, " +
  'meta[http-equiv="refresh" i]';

/** What is wrong with a page; empty where all is well. */
export function pageFaults(html: string): string[] {
  const { document } = parseHTML(html);
  const faults: string[] = [];
  const metas = [...document.querySelectorAll('meta[http-equiv="Content-Security-Policy"]')];
  if (metas.length !== 1) return [`${metas.length} policies`];
  const policy = readPolicy(metas[0]!.getAttribute("content") ?? "");
  if (metas[0]!.parentElement?.tagName !== "HEAD") faults.push("policy outside the head");
  const before = html.slice(0, html.indexOf("Content-Security-Policy"));
  if (/<(?:style|script|link|img|body)/i.test(before)) faults.push("something before the policy");
  if (policy.get("default-src")?.join() !== "'none'") faults.push("default-src is not 'none'");
  for (const name of ["base-uri", "form-action"]) {
    if (policy.get(name)?.join() !== "'none'") faults.push(`${name} is not 'none'`);
  }
  for (const name of policy.keys()) {
    if (name.startsWith("script-src") || name === "connect-src") faults.push(`${name} is allowed`);
  }
  for (const { tagName } of document.querySelectorAll(FORBIDDEN)) faults.push(`<${tagName}>`);
  for (const style of document.querySelectorAll("style")) {
    const hash = createHash("sha256").update(style.textContent ?? "").digest("base64");
    if (!policy.get("style-src-elem")?.includes(`'sha256-${hash}'`)) {
      faults.push(`<style> that the policy does not know: ${style.textContent?.slice(0, 60)}`);
    }
  }
  for (const element of document.querySelectorAll("*")) {
    for (const { name, value } of element.attributes) {
      const where = `${element.tagName} ${name}="${value.slice(0, 60)}"`;
      if (/^on/i.test(name) || name === "srcdoc") faults.push(where);
      // deno-lint-ignore no-control-regex -- what browsers leave out of an address
      const plain = value.replaceAll(/[\u0000-\u0020]/g, "").toLowerCase();
      if (/^(?:javascript|vbscript):/.test(plain)) faults.push(where);
      if (/^data:/.test(plain) && !/^data:image\/(?:svg\+xml|png|jpeg);base64,/.test(plain)) {
        faults.push(where);
      }
      if (/^(?:src|srcset|poster|background|data|xlink:href)$/i.test(name)) {
        if (!plain.startsWith("data:image/")) faults.push(where);
      }
      if (name === "style" && /url\(|expression\(|@import|position\s*:\s*fixed/i.test(value)) {
        faults.push(where);
      }
    }
  }
  return faults;
}

function readPolicy(text: string): Map<string, string[]> {
  return new Map(
    text.split(";").map((part) => part.trim().split(/\s+/))
      .map(([name, ...values]) => [name!, values]),
  );
}

/** Every page below a folder, with what is wrong with it. */
export async function pagesBelow(folder: string): Promise<Map<string, string[]>> {
  const pages = new Map<string, string[]>();
  for await (const { name, isDirectory } of Deno.readDir(folder)) {
    const path = `${folder}/${name}`;
    if (isDirectory) {
      for (const [page, faults] of await pagesBelow(path)) pages.set(page, faults);
      continue;
    }
    const text = /\.(?:html?|xhtml|svg|md|txt|css)$/i.test(name)
      ? await Deno.readTextFile(path)
      : "";
    if (/\.x?html?$/i.test(name) || /<html|<!doctype html/i.test(text.slice(0, 1000))) {
      pages.set(path, pageFaults(text));
    }
  }
  return pages;
}
