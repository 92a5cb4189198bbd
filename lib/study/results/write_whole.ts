/** Writes files of which a reader never sees half. @module */
import { randomUUID } from "node:crypto";

/** Writes beside the file and renames. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const temporary = `${path}.${randomUUID()}.part`;
  if (typeof content === "string") await Deno.writeTextFile(temporary, content);
  else await Deno.writeFile(temporary, content);
  await Deno.rename(temporary, path);
}
