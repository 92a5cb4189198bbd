import { assert, assertEquals } from "@std/assert";
import { join } from "node:path";
import { PROJECT_FOLDER } from "winterground/commands/terminal.ts";
import { findChromium, inChromium, type Tab } from "../harness/browser.ts";
import { inTemporary } from "../harness/in_temporary.ts";
import { task } from "../harness/task.ts";

/** ms; every cell on busy cores, nothing kept from an earlier run */
const PATIENCE = 1_200_000;

interface Output {
  readonly "output_type": string;
  readonly data?: Readonly<Record<string, unknown>>;
}

interface SavedCell {
  readonly "cell_type": string;
  readonly "execution_count"?: number | null;
  readonly outputs?: readonly Output[];
}

/** What a person sees of an open notebook. */
interface Seen {
  /** what stands before each code cell that has been laid out */
  readonly prompts: readonly string[];
  /** state of the kernel, as the mark beside its name says it */
  readonly kernel: string;
  /** true where something is not saved */
  readonly unsaved: boolean;
  /** questions and notes over the page */
  readonly dialogs: readonly string[];
  /** what cells complained of */
  readonly errors: readonly string[];
}

const SEEN = `(() => {
  const texts = (places) => [...document.querySelectorAll(places)]
    .map((one) => one.textContent.trim()).filter((text) => text !== "");
  return {
    prompts: texts(".jp-CodeCell .jp-InputPrompt"),
    kernel: document.querySelector(".jp-Notebook-ExecutionIndicator")?.dataset.status ?? "none",
    unsaved: document.querySelector(".lm-TabBar-tab.jp-mod-dirty") !== null,
    dialogs: texts(".jp-Dialog, .Toastify__toast"),
    errors: texts(".jp-OutputArea-output[data-mime-type='application/vnd.jupyter.error'], " +
      ".jp-OutputArea-output[data-mime-type='application/vnd.jupyter.stderr']"),
  };
})()`;

/** Looks at the page again and again until it is as wished; a cell's complaint ends it at once. */
async function until(
  tab: Tab,
  wish: string,
  fulfilled: (seen: Seen) => boolean,
): Promise<Seen> {
  const end = Date.now() + PATIENCE;
  for (;;) {
    const seen = await tab.value<Seen>(SEEN);
    assertEquals(seen.errors, [], `a cell failed while waiting for: ${wish}`);
    if (fulfilled(seen)) return seen;
    assert(Date.now() < end, `JupyterLab never showed: ${wish}; it shows ${JSON.stringify(seen)}`);
    await new Promise((done) => setTimeout(done, 200));
  }
}

/** Starts the task with copies in `copies`, gives the address that JupyterLab prints, and ends it. */
async function inLab(
  copies: string,
  folder: string,
  work: (address: URL) => Promise<void>,
): Promise<void> {
  const words = ["--no-browser", "--allow-root", "--port", "0", "--out", copies];
  const env = Object.fromEntries(
    ["CONFIG", "DATA", "RUNTIME"].map((name) => [`JUPYTER_${name}_DIR`, join(folder, name)]),
  );
  const lab = task("lab", words, PROJECT_FOLDER, { env }).spawn();
  const stdout = lab.stdout.cancel();
  let said = "";
  let found = (_address: string): void => {};
  const address = new Promise<string>((resolve) => found = resolve);
  const rest = (async () => {
    for await (const text of lab.stderr.pipeThrough(new TextDecoderStream())) {
      said += text;
      const one = /http:\/\/127\.0\.0\.1:\d+\/lab\S*token=\w+/.exec(said)?.[0];
      if (one !== undefined) found(one);
    }
  })();
  try {
    const ended = rest.then(() => Promise.reject(new Error("JupyterLab ended")));
    await Promise.race([ended, address.then((one) => work(new URL(one)))]);
  } catch (error) {
    throw new Error(`${(error as Error).message}\nJupyterLab said: ${said.slice(-2000)}`);
  } finally {
    try {
      lab.kill("SIGTERM");
    } catch {
      // it has ended
    }
    // its standard error ends only when the kernels, which write there too, have ended
    await Promise.all([lab.status, rest, stdout]);
  }
}

/** Presses a button of the notebook's toolbar, which listens to the mouse going down. */
async function press(tab: Tab, command: string): Promise<void> {
  await tab.value(
    `document.querySelector(".jp-NotebookPanel-toolbar [data-command='${command}']")
      .dispatchEvent(new MouseEvent("mousedown", { bubbles: true, button: 0 })), 0`,
  );
}

/** Opens a notebook, presses "restart and run all", waits for the last cell, saves it and gives its cells. */
async function runAll(tab: Tab, address: URL, path: string): Promise<readonly SavedCell[]> {
  const token = address.searchParams.get("token");
  await tab.open(`${address.origin}/lab/tree/${path}?token=${token}&reset`);
  const first = await until(
    tab,
    "the notebook with its kernel",
    ({ prompts, kernel, dialogs }) =>
      dialogs.length > 0 || (prompts.length > 3 && kernel === "idle"),
  );
  assertEquals(first.dialogs, [], "something is asked or told before the notebook is seen");
  await press(tab, "notebook:restart-run-all");
  await until(tab, "the question whether to restart", ({ dialogs }) => dialogs.length > 0);
  await tab.value(`document.querySelector(".jp-Dialog .jp-mod-accept").click()`);
  await until(tab, "cells that wait", ({ prompts }) => prompts.includes("[*]:"));
  await until(
    tab,
    "every cell run",
    ({ prompts, kernel }) =>
      kernel === "idle" && !prompts.some((text) => text === "[*]:" || text === "[ ]:"),
  );
  await press(tab, "docmanager:save");
  await until(tab, "the notebook saved", ({ unsaved }) => !unsaved);
  const answer = await fetch(`${address.origin}/api/contents/${path}?token=${token}`);
  return (await answer.json()).content.cells;
}

const shapesOf = (cells: readonly SavedCell[]) =>
  cells.map(({ outputs = [] }) =>
    outputs.map(({ "output_type": type, data = {} }) =>
      [type, ...Object.keys(data).sort()].join(" ")
    )
  );

/** The outputs are those of the committed notebook in number and kind, and every picture is drawn. */
async function assertWhole(tab: Tab, name: string, cells: readonly SavedCell[]): Promise<void> {
  const path = join(PROJECT_FOLDER, "notebooks", `${name}.ipynb`);
  const committed = JSON.parse(await Deno.readTextFile(path)).cells as readonly SavedCell[];
  assertEquals(shapesOf(cells), shapesOf(committed), `${name}: outputs`);
  const counts = cells.filter(({ "cell_type": kind }) => kind === "code")
    .map(({ "execution_count": count }) => count);
  assertEquals(counts, counts.map((_, k) => k + 1), `${name}: order of the cells`);
  const images = await tab.value<readonly (readonly [number, string])[]>(
    `Promise.all([...document.querySelectorAll(".jp-OutputArea img")].map(async (image) => {
      await image.decode().catch(() => {}); // on a busy machine pictures come after their cells
      return [image.naturalWidth, image.alt];
    }))`,
  );
  assert(images.length > 0, `${name}: no chart is seen`);
  for (const [width, alt] of images) assert(width > 0 && alt !== "", `${name}: ${alt}`);
}

const INSTALLED = await Deno.stat(join(PROJECT_FOLDER, ".venv", "bin", "jupyter-lab"))
  .then(() => true, () => false);
const MISSING = findChromium() === null
  ? "no Chromium on the search path"
  : INSTALLED
  ? null
  : "no JupyterLab; deno task lab --install-only gets it";

Deno.test({
  name: "JupyterLab, as deno task lab opens it, runs 00 and 07 top to bottom; every chart is seen" +
    (MISSING === null ? "" : ` (skipped: ${MISSING})`),
  ignore: MISSING !== null,
  fn: () =>
    // Property: no error, no output lost, no question before the first page
    inTemporary(async (folder) => {
      const copies = join(PROJECT_FOLDER, "out", `lab-test-${crypto.randomUUID()}`);
      try {
        await inLab(copies, folder, (address) =>
          inChromium(async (tab) => {
            await tab.look({ width: 1280, height: 1000 });
            for (const name of ["00-study", "07-store"]) {
              await assertWhole(tab, name, await runAll(tab, address, `notebooks/${name}.ipynb`));
            }
          }));
      } finally {
        await Deno.remove(copies, { recursive: true });
      }
    }),
});
