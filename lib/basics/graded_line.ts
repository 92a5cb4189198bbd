/** Cell faces that are fine where temperature bends. @module */

/** How {@link gradedLine} grows its cells. */
export interface GradedLineOptions {
  /** m, smallest cell */
  readonly finest: number;
  /** ratio of neighbouring cells, above 1 */
  readonly growth: number;
  /** whether the first mark is an edge too; the far end never is */
  readonly fineAtStart: boolean;
}

function growing(length: number, finest: number, growth: number): number[] {
  const faces = [0];
  let cell = finest;
  while (faces.at(-1)! + 1.5 * cell < length) {
    faces.push(faces.at(-1)! + cell);
    cell *= growth;
  }
  faces.push(length);
  return faces;
}

/**
 * Faces of cells along a line, on every mark, small at the inner marks and growing away from them.
 *
 * @param marks m, rising
 * @param options finest cell, growth
 * @returns m, rising, first and last mark included
 */
export function gradedLine(marks: readonly number[], options: GradedLineOptions): Float64Array {
  const { finest, growth } = options;
  const faces: number[] = [marks[0]!];
  for (let piece = 0; piece + 1 < marks.length; piece++) {
    const [start, end] = [marks[piece]!, marks[piece + 1]!];
    const fineStart = piece > 0 || options.fineAtStart;
    const fineEnd = piece + 2 < marks.length;
    const length = end - start;
    const inner = fineStart && fineEnd
      ? bothEnds(length, finest, growth)
      : fineStart
      ? growing(length, finest, growth)
      : growing(length, finest, growth).map((at) => length - at).reverse();
    for (const at of inner.slice(1, -1)) faces.push(start + at);
    faces.push(end);
  }
  return Float64Array.from(faces);
}

function bothEnds(length: number, finest: number, growth: number): number[] {
  const half = growing(length / 2, finest, growth);
  return [...half, ...half.slice(0, -1).map((at) => length - at).reverse()];
}
