/** Hashes of plain data with typed arrays, the same for the same content. @module */
import { createHash, type Hash } from "node:crypto";

function feed(hash: Hash, value: unknown): void {
  if (ArrayBuffer.isView(value)) {
    hash.update(`<${value.constructor.name} ${value.byteLength}>`);
    hash.update(new Uint8Array(value.buffer, value.byteOffset, value.byteLength));
  } else if (Array.isArray(value)) {
    hash.update("[");
    for (const part of value) feed(hash, part);
    hash.update("]");
  } else if (typeof value === "object" && value !== null) {
    hash.update("{");
    for (const [key, part] of Object.entries(value).sort(([a], [b]) => a < b ? -1 : 1)) {
      if (part === undefined) continue;
      hash.update(`${JSON.stringify(key)}:`);
      feed(hash, part);
    }
    hash.update("}");
  } else {
    hash.update(`${typeof value} ${String(value)};`);
  }
}

/** SHA-256, hex, of plain data; the order of keys does not matter, typed arrays count by their bytes. */
export function hashOf(...values: readonly unknown[]): string {
  const hash = createHash("sha256");
  for (const value of values) feed(hash, value);
  return hash.digest("hex");
}
