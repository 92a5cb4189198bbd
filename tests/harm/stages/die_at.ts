/** Makes a program die at one of its calls to the file system. @module */

const CALLS = [
  "rename",
  "remove",
  "mkdir",
  "writeTextFile",
  "writeFile",
  "open",
  "readDir",
  "stat",
];
const FILE_CALLS = ["writeSync", "truncate", "seek", "syncDataSync"] as const;

/** Kills this process at its call of that number, from 1; 0 for never. */
export function dieAt(call: number): void {
  let calls = 0;
  const count = () => {
    if (++calls === call) Deno.kill(Deno.pid, "SIGKILL");
  };
  for (const name of CALLS as ["rename"]) {
    const real = Deno[name];
    Deno[name] = ((...given: Parameters<typeof real>) => {
      count();
      return real(...given);
    }) as typeof real;
  }
  const file = Deno.FsFile.prototype as unknown as Record<string, (...given: unknown[]) => unknown>;
  for (const name of FILE_CALLS) {
    const real = file[name]!;
    file[name] = function (this: Deno.FsFile, ...given: unknown[]) {
      count();
      return real.apply(this, given);
    };
  }
}
