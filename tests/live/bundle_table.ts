/** What a bundle is made of, for the message of a test. @module */
import type { Bundle } from "winterground/live/build/bundle.ts";

/** Rooms and packages with their bytes, the largest first. */
export function table({ files }: Bundle): string {
  const sums = new Map<string, number>();
  for (const [path, bytes] of Object.entries(files)) {
    const name = /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1] ??
      path.split("/").slice(0, 2).join("/");
    sums.set(name, (sums.get(name) ?? 0) + bytes);
  }
  return [...sums].sort(([, a], [, b]) => b - a).map(([name, bytes]) => `${bytes} ${name}`)
    .join("\n");
}
