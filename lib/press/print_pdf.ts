/**
 * Pages printed as PDF by a browser of this machine, where there is one. The browser is started by a
 * small program of its own (`printer.ts`), which may run that browser and nothing else.
 *
 * @module
 */
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** Names of browsers that print without a screen, as they stand on the search path. */
const ON_PATH = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
/** Where they stand that are on no search path. */
const ELSEWHERE: Readonly<Record<string, readonly string[]>> = {
  darwin: [
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  ],
  windows: [
    "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
    "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
  ],
};

/**
 * Path of a browser that can print; null where there is none.
 *
 * @param searchPath folders in the form of the variable PATH
 */
export async function findBrowser(searchPath: string): Promise<string | null> {
  const folders = searchPath.split(delimiter).filter((folder) => folder !== "");
  const paths = [
    ...ON_PATH.flatMap((name) => folders.map((folder) => join(folder, name))),
    ...ELSEWHERE[Deno.build.os] ?? [],
  ];
  for (const path of paths) {
    const found = await Deno.stat(path).catch(() => null);
    if (found?.isFile === true) return path;
  }
  return null;
}

/** A page to be printed. */
export interface PrintRequest {
  /** program of {@link findBrowser} */
  readonly browser: string;
  /** file of the page */
  readonly page: string;
  /** file to be written */
  readonly pdf: string;
  /** time that the file says it was made at, ISO text: the same page gives the same bytes */
  readonly time: string;
  /** ends the printing */
  readonly signal?: AbortSignal;
}

/** A page that could not be printed. */
export class PrintFailure extends Error {
  override name = "PrintFailure";
}

/**
 * Prints a page on the paper that its own style names.
 *
 * @throws {PrintFailure} where the browser does not print it
 */
export async function printPdf(request: PrintRequest): Promise<void> {
  const { browser, page, pdf, time, signal } = request;
  const profile = await Deno.makeTempDir({ prefix: "winterground-print-" });
  try {
    const { code, stderr } = await new Deno.Command(Deno.execPath(), {
      args: [
        ...["run", "--quiet", "--no-prompt", "--allow-read", "--allow-sys=uid"],
        `--allow-write=${dirname(pdf)},${profile}`,
        ...[`--allow-run=${browser}`, "--allow-env=PATH", "--ignore-env"],
        fileURLToPath(new URL("./printer.ts", import.meta.url)),
        ...[browser, page, pdf, time, profile],
      ],
      stdin: "null",
      stdout: "null",
      ...(signal === undefined ? {} : { signal }),
    }).output();
    signal?.throwIfAborted();
    if (code !== 0) {
      const words = new TextDecoder().decode(stderr).trim().split("\n").at(-1) ?? "";
      throw new PrintFailure(`${browser} cannot print ${page}: ${words}`);
    }
  } finally {
    await Deno.remove(profile, { recursive: true }).catch(() => {});
  }
}
