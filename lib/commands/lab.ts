/**
 * `deno task lab`: opens the notebooks in JupyterLab, from a private Python environment.
 *
 * @module
 */
import { join } from "node:path";
import { endChild } from "../press/end_child.ts";
import type { CommandLine, CommandSpec } from "./command_line.ts";
import { NOTEBOOK_FOLDER } from "./notebook_files.ts";
import { CommandFailure, complain, PROJECT_FOLDER, runCommand } from "./terminal.ts";

const SPEC: CommandSpec = {
  name: "lab",
  summary: "Opens the notebooks in JupyterLab. Needs Python 3.9 or later.",
  args: "",
  minArgs: 0,
  maxArgs: 0,
  options: [
    { name: "port", value: "NUMBER", meaning: "port to listen on (this machine only)" },
    { name: "no-browser", meaning: "print the address instead of opening a browser" },
    { name: "install-only", meaning: "set up the environment and the kernel, then stop" },
  ],
  notes: ["The first run downloads JupyterLab into .venv; nothing else is installed."],
};

/** Version of JupyterLab that is installed. */
const JUPYTERLAB = "jupyterlab==4.6.6";
/** The private Python environment. */
const ENVIRONMENT = join(PROJECT_FOLDER, ".venv");
const PROGRAMS = join(ENVIRONMENT, Deno.build.os === "windows" ? "Scripts" : "bin");

/**
 * The kernelspec: interrupts go as messages (a signal would end the kernel and lose its state), and
 * text is the same on every machine.
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

async function openLab(line: CommandLine, signal: AbortSignal): Promise<number> {
  await prepare(signal);
  if (line.switches.has("install-only")) return 0;
  const port = line.values.port === undefined ? [] : [`--port=${line.values.port}`];
  const browser = line.switches.has("no-browser") ? ["--no-browser"] : [];
  const words = ["--ip=127.0.0.1", `--notebook-dir=${NOTEBOOK_FOLDER}`, ...port, ...browser];
  return await run(join(PROGRAMS, "jupyter-lab"), words, signal);
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
}

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
): Promise<number> {
  const child = new Deno.Command(program, {
    args: [...args],
    cwd: PROJECT_FOLDER,
    env: { JUPYTER_PREFER_ENV_PATH: "1", VIRTUAL_ENV: ENVIRONMENT },
  }).spawn();
  const end = (): void => endChild(child, "SIGTERM");
  signal.addEventListener("abort", end);
  const { code } = await child.status;
  signal.removeEventListener("abort", end);
  return code;
}

if (import.meta.main) await runCommand(SPEC, openLab);
