/**
 * Program that prints one page with a browser: `printer.ts BROWSER PAGE PDF TIME PROFILE`.
 *
 * @module
 */
import { pathToFileURL } from "node:url";

/** s after which a page that is not printed never will be. */
const LIMIT = 180;

/**
 * The bytes of a PDF with the times in it set to one, in their place and length.
 *
 * @param bytes as a browser wrote it
 * @param time ISO text
 */
export function withTime(bytes: Uint8Array, time: string): Uint8Array {
  const digits = new Date(time).toISOString().replaceAll(/\D/g, "").slice(0, 14);
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
  const set = Uint8Array.from(bytes);
  for (
    const found of text.matchAll(/\/(?:CreationDate|ModDate) ?\(D:(\d{14})(?:[+-]\d\d'\d\d'?)?/g)
  ) {
    const at = found.index + found[0].indexOf(found[1]!);
    [...digits].forEach((digit, place) => set[at + place] = digit.charCodeAt(0));
  }
  return set;
}

async function print(
  [browser, page, pdf, time, profile]: readonly [string, string, string, string, string],
): Promise<void> {
  const root = Deno.build.os !== "windows" && Deno.uid() === 0;
  const { code, stderr } = await new Deno.Command(browser, {
    args: [
      ...["--headless", "--disable-gpu", "--no-first-run", "--disable-extensions"],
      ...["--disable-background-networking", "--disable-sync", "--disable-dev-shm-usage"],
      "--host-resolver-rules=MAP * ~NOTFOUND", // a page of ours needs nothing from elsewhere
      `--user-data-dir=${profile}`,
      ...(root ? ["--no-sandbox"] : []), // as root a browser starts in no other way
      "--no-pdf-header-footer",
      `--print-to-pdf=${pdf}`,
      pathToFileURL(page).href,
    ],
    env: { HOME: profile, TZ: "UTC" },
    stdin: "null",
    stdout: "null",
    stderr: "piped",
    signal: AbortSignal.timeout(1000 * LIMIT),
  }).output();
  const written = await Deno.stat(pdf).catch(() => null);
  if (code !== 0 || written === null) {
    throw new Error(new TextDecoder().decode(stderr).trim().split("\n").at(-1) || `status ${code}`);
  }
  await Deno.writeFile(pdf, withTime(await Deno.readFile(pdf), time));
}

if (import.meta.main) {
  await print(Deno.args as unknown as [string, string, string, string, string]);
}
