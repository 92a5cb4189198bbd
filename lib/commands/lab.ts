/**
 * `deno task lab`: opens copies of the notebooks in JupyterLab, from a private Python environment.
 *
 * @module
 */
import { dirname, join, resolve, sep as SEPARATOR } from "node:path";
import { InputError } from "../basics/mod.ts";
import { endChild } from "../press/end_child.ts";
import { defaultStudyPath, openStudy, type Study } from "../study/mod.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { type Original, originalsBelow, originalsIn, refreshCopies } from "./lab_folder.ts";
import { NOTEBOOK_FOLDER } from "./notebook_files.ts";
import { CommandFailure, complain, PROJECT_FOLDER, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "lab",
  summary: "Opens copies of the notebooks in JupyterLab. Needs Python 3.9 or later.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [
    { name: "study", value: "FILE", meaning: "study the notebooks work on (default: the demo)" },
    { name: "climate", value: "FILE", meaning: "weather in place of the study's own" },
    { name: "out", value: "DIR", meaning: "where the copies lie, within out (default: out/lab)" },
    { name: "port", value: "NUMBER", meaning: "port to listen on (this machine only)" },
    { name: "no-browser", meaning: "print the address instead of opening a browser" },
    { name: "allow-root", meaning: "let JupyterLab run as the administrator of the machine" },
    { name: "install-only", meaning: "set up the environment and the kernel, then stop" },
  ],
  notes: [
    "The copies lie in out/lab of the project, with docs, the study and its results in sight. What you change",
    "there stays; copies that nobody changed follow the project.",
    "The first run downloads JupyterLab into .venv; nothing else is installed.",
  ],
};

/** Version of JupyterLab that is installed. */
const JUPYTERLAB = "jupyterlab==4.6.6";
/** The private Python environment. */
const ENVIRONMENT = join(PROJECT_FOLDER, ".venv");
const PROGRAMS = join(ENVIRONMENT, Deno.build.os === "windows" ? "Scripts" : "bin");

/**
 * The kernelspec: interrupts go as messages, because a signal would end the kernel at once (after a
 * message it answers no more until it is started again), and text is the same on every machine.
 */
function kernelSpec(deno: string): Record<string, unknown> {
  return {
    argv: [deno, "jupyter", "--kernel", "--conn", "{connection_file}"],
    display_name: "Deno",
    language: "typescript",
    interrupt_mode: "message",
    env: { NO_COLOR: "1", TZ: "UTC" },
  };
}

/** Below it the copies lie: notebooks find the library by the deno.json above them. */
const OUT = join(PROJECT_FOLDER, "out");

/** Where the copies lie. */
function labFolder(given: string | undefined): string {
  const folder = resolve(given ?? join(OUT, "lab"));
  if (!folder.startsWith(OUT + SEPARATOR)) {
    throw new InputError(
      `Cannot put the copies in ${folder}: expected a folder in ${OUT}, below which notebooks ` +
        "find the library",
    );
  }
  return folder;
}

async function openLab(line: CommandLine, signal: AbortSignal): Promise<number> {
  const { values, switches } = line;
  const folder = labFolder(values.out);
  const study = await openStudy(values.study ?? defaultStudyPath(), {
    ...(values.climate === undefined ? {} : { climate: values.climate }),
  });
  await prepare(signal);
  if (switches.has("install-only")) return 0;
  const path = await layOut(folder, study, values.study, signal);
  const words = [
    "--ip=127.0.0.1",
    `--ServerApp.root_dir=${folder}`,
    "--LabApp.default_url=/lab/tree/notebooks/00-study.ipynb",
    ...(values.port === undefined ? [] : [`--port=${values.port}`]),
    ...(switches.has("no-browser") ? ["--no-browser"] : []),
    ...(switches.has("allow-root") ? ["--allow-root"] : []),
  ];
  return await run(join(PROGRAMS, "jupyter-lab"), words, signal, {
    WINTERGROUND_STUDY: path,
    ...(values.climate === undefined ? {} : { WINTERGROUND_CLIMATE: resolve(values.climate) }),
  });
}

/**
 * Puts in the working folder what a person wants in sight: copies of the notebooks and, of the demo,
 * of its files; links to the docs, to the folder of a study of one's own and to its results.
 *
 * @returns path of the study the notebooks work on
 */
async function layOut(
  folder: string,
  study: Study,
  given: string | undefined,
  signal: AbortSignal,
): Promise<string> {
  const data = join(PROJECT_FOLDER, "data");
  const demo = given !== undefined ? [] : originalsBelow(
    study.files.map(({ path }) => path).filter((path) => path.startsWith(data)),
    data,
    "demo",
  );
  const originals: Original[] = [
    ...await originalsIn(NOTEBOOK_FOLDER, "notebooks", /^\d+-.*\.ipynb$/),
    ...demo,
  ];
  for (const place of await refreshCopies(folder, originals)) {
    complain(`${place} stays as you changed it; there is a newer one: rename yours to get it`);
  }
  const own = given === undefined ? null : resolve(given);
  await link(join(PROJECT_FOLDER, "docs"), join(folder, "docs"), signal);
  await link(resolve("out", study.heading.name), join(folder, "results"), signal);
  await link(own === null ? null : dirname(own), join(folder, "study"), signal);
  if (own !== null) return own;
  const copied = originals.find(({ from }) => from === resolve(defaultStudyPath()))!;
  return join(folder, copied.place);
}

/**
 * Shows a folder beside the copies, in place of the link of an earlier start, or none. Python makes the link:
 * Deno wants leave to write everywhere for it.
 */
async function link(folder: string | null, place: string, signal: AbortSignal): Promise<void> {
  const program = [
    "import os, sys",
    "folder, link = sys.argv[1:]",
    "if os.path.islink(link): os.unlink(link)",
    "if os.path.isdir(folder) and not os.path.lexists(link):",
    "    os.symlink(folder, link, target_is_directory=True)",
  ].join("\n");
  const words = ["-c", program, folder ?? "", place];
  const status = await run(join(PROGRAMS, "python"), words, signal);
  if (status !== 0) complain(`${folder} cannot be shown beside the notebooks; open it by itself`);
}

/** Makes the environment where it is missing, and writes the kernelspec. */
async function prepare(signal: AbortSignal): Promise<void> {
  const lab = join(PROGRAMS, Deno.build.os === "windows" ? "jupyter-lab.exe" : "jupyter-lab");
  if (!await Deno.stat(lab).then(() => true, () => false)) {
    const python = await findPython();
    complain(`creating a Python environment with ${JUPYTERLAB} in ${ENVIRONMENT}`);
    await must(python, ["-m", "venv", ENVIRONMENT], signal, "venv is missing or not usable");
    const pip = ["-m", "pip", "install", "--quiet", "--disable-pip-version-check", JUPYTERLAB];
    await must(join(PROGRAMS, "python"), pip, signal, "JupyterLab could not be downloaded");
  }
  const folder = join(ENVIRONMENT, "share", "jupyter", "kernels", "deno");
  await Deno.mkdir(folder, { recursive: true });
  const spec = JSON.stringify(kernelSpec(Deno.execPath()), null, 2);
  await Deno.writeTextFile(join(folder, "kernel.json"), `${spec}\n`);
  const settings = join(ENVIRONMENT, "share", "jupyter", "lab", "settings");
  await Deno.mkdir(settings, { recursive: true });
  await Deno.writeTextFile(join(settings, "overrides.json"), `${JSON.stringify(QUIET, null, 2)}\n`);
}

/** Neither news nor updates are asked for: JupyterLab would ask before the first notebook is seen. */
const QUIET = {
  "@jupyterlab/apputils-extension:notification": {
    checkForUpdates: false,
    doNotDisturbMode: false,
    fetchNews: "false",
  },
};

/** A Python that is new enough. */
async function findPython(): Promise<string> {
  const test = "import sys; sys.exit(sys.version_info < (3, 9))";
  for (const name of ["python3", "python"]) {
    const command = new Deno.Command(name, {
      args: ["-c", test],
      stdin: "null",
      stdout: "null",
      stderr: "null",
    });
    // a program that does not exist makes `output` throw at once
    const found = await Promise.resolve().then(() => command.output()).catch(() => undefined);
    if (found?.success) return name;
  }
  throw new CommandFailure(
    "Cannot open JupyterLab: no Python 3.9 or later on this machine. " +
      "Install Python, or run the notebooks without it: deno task study",
  );
}

async function must(
  program: string,
  args: readonly string[],
  signal: AbortSignal,
  reason: string,
): Promise<void> {
  const status = await run(program, args, signal);
  signal.throwIfAborted();
  if (status !== 0) throw new CommandFailure(`Cannot open JupyterLab: ${reason}`);
}

async function run(
  program: string,
  args: readonly string[],
  signal: AbortSignal,
  variables: Readonly<Record<string, string>> = {},
): Promise<number> {
  const child = new Deno.Command(program, {
    args: [...args],
    cwd: PROJECT_FOLDER,
    env: { JUPYTER_PREFER_ENV_PATH: "1", VIRTUAL_ENV: ENVIRONMENT, ...variables },
  }).spawn();
  const end = (): void => endChild(child, "SIGTERM");
  signal.addEventListener("abort", end);
  const { code } = await child.status;
  signal.removeEventListener("abort", end);
  return code;
}

if (import.meta.main) await runCommand(SPEC, openLab);
