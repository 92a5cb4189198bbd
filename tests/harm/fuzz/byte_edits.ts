/** Faults of disks, cables and programs that write other encodings. @module */
import type { Dice } from "./dice.ts";

/** A change of the bytes of a file. */
export type ByteEdit = (bytes: Uint8Array<ArrayBuffer>, dice: Dice) => Uint8Array<ArrayBuffer>;

function joined(...parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

function place(bytes: Uint8Array, dice: Dice): number {
  return dice.whole(0, dice.percent(30) ? Math.min(300, bytes.length) : bytes.length);
}

function random(dice: Dice, most: number): Uint8Array {
  return Uint8Array.from({ length: dice.whole(1, most) }, () => dice.whole(0, 255));
}

function utf16(bytes: Uint8Array, little: boolean, mark: boolean): Uint8Array<ArrayBuffer> {
  const text = new TextDecoder().decode(bytes);
  const view = new DataView(new ArrayBuffer(2 * text.length));
  for (let at = 0; at < text.length; at++) view.setUint16(2 * at, text.charCodeAt(at), little);
  const body = new Uint8Array(view.buffer);
  return mark ? joined(Uint8Array.from(little ? [0xff, 0xfe] : [0xfe, 0xff]), body) : body;
}

/** All of them, by name. */
export const BYTE_EDITS: Readonly<Record<string, ByteEdit>> = {
  "bit flipped": (bytes, dice) => {
    const all = bytes.slice();
    if (all.length > 0) all[Math.min(all.length - 1, place(all, dice))]! ^= 1 << dice.whole(0, 7);
    return all;
  },
  "bits flipped": (bytes, dice) => {
    const all = bytes.slice();
    for (let k = 0; k < 50 && all.length > 0; k++) {
      all[dice.whole(0, all.length - 1)]! ^= 1 << dice.whole(0, 7);
    }
    return all;
  },
  "cut off": (bytes, dice) => bytes.slice(0, place(bytes, dice)),
  "start lost": (bytes, dice) => bytes.slice(place(bytes, dice)),
  "bytes lost": (bytes, dice) => {
    const from = place(bytes, dice);
    return joined(bytes.subarray(0, from), bytes.subarray(from + dice.whole(1, 2000)));
  },
  "bytes put in": (bytes, dice) => {
    const at = place(bytes, dice);
    return joined(bytes.subarray(0, at), random(dice, 200), bytes.subarray(at));
  },
  "zeros put in": (bytes, dice) => {
    const at = place(bytes, dice);
    return joined(bytes.subarray(0, at), new Uint8Array(dice.whole(1, 5000)), bytes.subarray(at));
  },
  "end of zeros": (bytes, dice) => bytes.slice().fill(0, place(bytes, dice)),
  "byte-order mark": (bytes) => joined(Uint8Array.from([0xef, 0xbb, 0xbf]), bytes),
  "two byte-order marks": (bytes) =>
    joined(Uint8Array.from([0xef, 0xbb, 0xbf, 0xef, 0xbb, 0xbf]), bytes),
  "UTF-16": (bytes, dice) => utf16(bytes, dice.percent(50), dice.percent(70)),
  "Latin letters": (bytes, dice) => {
    const at = place(bytes, dice);
    return joined(bytes.subarray(0, at), Uint8Array.from([0xb0, 0x43, 0xe9]), bytes.subarray(at));
  },
  "only noise": (_bytes, dice) => joined(random(dice, 5000)),
  "empty": () => new Uint8Array(0),
};
