/**
 * Series of numbers as text in a page, to the last bit: their bytes sorted by place, which packs
 * better, deflated, in base64. Works in Deno and in browsers, without network.
 *
 * @module
 */

const BYTES = Float64Array.BYTES_PER_ELEMENT;

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  stream: CompressionStream | DecompressionStream,
): Promise<Uint8Array<ArrayBuffer>> {
  const piped = new Blob([bytes]).stream().pipeThrough(stream);
  return new Uint8Array(await new Response(piped).arrayBuffer());
}

/** First bytes of all numbers, then second bytes: neighbours are alike. */
function sortBytes(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const count = bytes.length / BYTES;
  return Uint8Array.from(bytes, (_, k) => bytes[(k % count) * BYTES + Math.floor(k / count)]!);
}

function unsortBytes(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const count = bytes.length / BYTES;
  return Uint8Array.from(bytes, (_, k) => bytes[(k % BYTES) * count + Math.floor(k / BYTES)]!);
}

/**
 * Packs series of one length, one after the other.
 *
 * @param series any unit
 */
export async function packSeries(series: readonly Float64Array[]): Promise<string> {
  const all = Float64Array.from(series.flatMap((one) => [...one]));
  const packed = await through(
    sortBytes(new Uint8Array(all.buffer)),
    new CompressionStream("deflate-raw"),
  );
  let binary = "";
  for (const byte of packed) binary += String.fromCharCode(byte);
  return btoa(binary);
}

/**
 * Unpacks what {@link packSeries} packed.
 *
 * @param text base64
 * @param count number of series
 */
export async function unpackSeries(text: string, count: number): Promise<Float64Array[]> {
  const packed = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
  const bytes = unsortBytes(await through(packed, new DecompressionStream("deflate-raw")));
  const all = new Float64Array(bytes.buffer);
  const length = all.length / count;
  return Array.from({ length: count }, (_, k) => all.slice(k * length, (k + 1) * length));
}
