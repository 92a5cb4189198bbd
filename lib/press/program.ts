/**
 * A program that ends with everything it started: it leads a process group of its own, and holds the
 * reading end of a pipe that breaks when this process ends, however that happens.
 *
 * @module
 */
import { endChild } from "./end_child.ts";

/** What is started. */
export interface ProgramOptions {
  /** words of the command line */
  readonly args: readonly string[];
  /** folder it runs in */
  readonly folder: string;
  /** its whole environment */
  readonly environment: Readonly<Record<string, string>>;
}

/** A program that runs. */
export interface Program {
  /** settles when it has ended by itself or was ended */
  readonly ended: Promise<void>;
  /** true once it has ended */
  hasEnded(): boolean;
  /** what it wrote to standard error so far, and how it ended if it has */
  lastWords(): string;
  /** Ends it with the group it leads. */
  end(): Promise<void>;
}

/** ms a program has to end when its pipe breaks, before it is killed. */
const GRACE = 500;
/** Lines of standard error that are passed on. */
const MOST_WORDS = 6;
/** What Deno says at each start. */
const NOISE = /^Warning .* is unstable and might change/;
/** Systems with process groups. */
const HAS_GROUPS = Deno.build.os !== "windows";

/** Starts a program. */
export function startProgram(path: string, options: ProgramOptions): Program {
  const child = new Deno.Command(path, {
    args: [...options.args],
    cwd: options.folder,
    clearEnv: true,
    env: { ...options.environment },
    detached: HAS_GROUPS,
    stdin: "piped",
    stdout: "null",
    stderr: "piped",
  }).spawn();
  let text = "";
  let over = false;
  let how = "";
  const read = async (): Promise<void> => {
    const decoder = new TextDecoder();
    for await (const chunk of child.stderr) text += decoder.decode(chunk, { stream: true });
  };
  const said = read();
  const ended = child.status.then(({ code, signal }) => {
    over = true;
    how = signal === null ? `exit status ${code}` : `ended by ${signal}`;
  });
  const end = async (): Promise<void> => {
    const byItself = over;
    await child.stdin.close().catch(() => {}); // it kills its group, unless it hangs or starts
    await within(ended, GRACE);
    const left = byItself || !over;
    if (!over) endChild(child, "SIGKILL");
    await ended;
    if (left && HAS_GROUPS) await killGroup(child.pid);
    await within(said, GRACE); // a program that left the group may hold the other end
    await child.stderr.cancel().catch(() => {});
  };
  let ending: Promise<void> | undefined;
  return {
    ended,
    hasEnded: () => over,
    lastWords: () =>
      [how, ...text.split("\n")].filter((line) => line.trim() !== "" && !NOISE.test(line))
        .slice(0, MOST_WORDS).join("\n"),
    end: () => ending ??= end(),
  };
}

/** Kills what is left of a group; where this process may not, a Deno of its own does. */
async function killGroup(leader: number): Promise<void> {
  try {
    Deno.kill(-leader, "SIGKILL");
  } catch (error) {
    if (!(error instanceof Deno.errors.NotCapable)) return; // there is none left
    const code = `try { Deno.kill(-${leader}, "SIGKILL"); } catch { /* none left */ }`;
    await new Deno.Command(Deno.execPath(), { args: ["eval", "--no-config", code] }).output();
  }
}

async function within(work: Promise<unknown>, milliseconds: number): Promise<void> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  await Promise.race([work, new Promise((done) => timer = setTimeout(done, milliseconds))]);
  clearTimeout(timer);
}
