/** `deno run -A work_and_die.ts rows|cache FOLDER CALL`: works and dies at a call to the file system. */
import { diskCache } from "winterground/study/run/cache.ts";
import { dieAt } from "./die_at.ts";
import { goOn } from "./rows.ts";

const [what, folder, call] = Deno.args;
dieAt(Number(call));
if (what === "rows") await goOn(folder!);
else {
  for (const key of ["one", "two"]) {
    await diskCache(folder!, { entries: 2, bytes: 1e6 }).get(key, () => ({ key, values: [1, 2] }));
  }
}
