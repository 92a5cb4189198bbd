/**
 * Writes a run into a folder and dies at one of its calls to the file system:
 * `deno run -A publish_and_die.ts TARGET MARK CALL [inside]`. Ends with status 0 where it lived.
 */
import { publishSmallRun } from "./small_run.ts";

const [target, mark, call, inside] = Deno.args;
let calls = 0;
const fatal = ["rename", "remove", "mkdir", "writeTextFile", "open", "readDir", "lstat", "stat"];
for (const name of fatal as ["rename"]) {
  const real = Deno[name];
  Deno[name] = ((...given: Parameters<typeof real>) => {
    if (++calls === Number(call)) Deno.kill(Deno.pid, "SIGKILL");
    return real(...given);
  }) as typeof real;
}

await publishSmallRun(target!, mark!, inside ?? "");
