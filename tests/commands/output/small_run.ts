/** A run of a few small files, each of which holds its mark. @module */
import { join } from "node:path";
import { openStage } from "winterground/commands/output/stage.ts";

/** Writes the run into a folder; place `inside` uses no room beside it. */
export async function publishSmallRun(target: string, mark: string, place: string): Promise<void> {
  const stage = await openStage(target, { inside: place === "inside" });
  for (const name of ["results.json", "report.html", "notebooks/01-climate.ipynb"]) {
    await Deno.writeTextFile(join(stage.folder, name), mark);
  }
  if (mark === "second") await Deno.writeTextFile(join(stage.folder, "hourly.csv"), mark);
  await stage.publish();
}
