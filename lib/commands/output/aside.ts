/** Files of the user's that had to make room, told. @module */
import { join } from "node:path";
import { say } from "../terminal.ts";
import type { KeptAside } from "./switch.ts";

/** Names the user's files that had to make room. */
export function sayAside(folder: string, aside: KeptAside): void {
  for (const { from, to } of aside) {
    say(`kept aside: ${join(folder, from)}, not as a run wrote it, is now ${join(folder, to)}`);
  }
}
