/**
 * Work in pieces: a long sum says which parts of it do not wait for each other, and whoever runs it
 * does them one after the other or side by side. The sum itself is the same either way.
 *
 * @module
 */

/** A part of a sum that another thread can do: plain data in, plain data out. */
export interface Task<Question, Answer> {
  /** name among all tasks of the chapters, such as "store.settled" */
  readonly name: string;
  /** true where the answer is worth keeping on disk under its question */
  readonly kept?: boolean;
  /** the sum; sees only its question */
  readonly run: (question: Question) => Answer;
}

/**
 * Any task.
 *
 * @internal
 */
// deno-lint-ignore no-explicit-any
export type AnyTask = Task<any, any>;

/** A task with its question; `Answer` is what it will give. */
export interface Piece<Answer> {
  /** what is to be done */
  readonly task: Task<never, Answer>;
  /** what it is done with */
  readonly question: unknown;
}

/** A sum in pieces: gives batches of pieces and is handed their answers in the same order. */
export type Steps<Result> = Generator<readonly Piece<unknown>[], Result, readonly unknown[]>;

/** A task with its question. */
export function piece<Question, Answer>(
  task: Task<Question, Answer>,
  question: Question,
): Piece<Answer> {
  return { task: task as Task<never, Answer>, question };
}

/**
 * Pieces that do not wait for each other, one after the other or side by side.
 *
 * @example
 * ```ts
 * import { assertEquals } from "@std/assert";
 * import { alone, each, type Steps } from "./work.ts";
 *
 * const square = { name: "square", run: (value: number) => value * value };
 * function* sumOfSquares(values: number[]): Steps<number> {
 *   const squares = yield* each(square, values);
 *   return squares.reduce((sum, value) => sum + value, 0);
 * }
 * assertEquals(alone(sumOfSquares([1, 2, 3])), 14);
 * ```
 *
 * @param task done for each
 * @param questions in the order of the answers
 */
export function* each<Question, Answer>(
  task: Task<Question, Answer>,
  questions: readonly Question[],
): Steps<Answer[]> {
  return (yield questions.map((question) => piece(task, question))) as Answer[];
}

/** Answers of unlike pieces that do not wait for each other. */
export function* together<const Pieces extends readonly Piece<unknown>[]>(
  ...pieces: Pieces
): Steps<{ [K in keyof Pieces]: Pieces[K] extends Piece<infer Answer> ? Answer : never }> {
  return (yield pieces) as {
    [K in keyof Pieces]: Pieces[K] extends Piece<infer Answer> ? Answer : never;
  };
}

/** Runs a sum here, piece by piece. */
export function alone<Result>(steps: Steps<Result>): Result {
  let turn = steps.next();
  while (turn.done !== true) {
    turn = steps.next(turn.value.map(({ task, question }) => task.run(question as never)));
  }
  return turn.value;
}

/**
 * Runs a sum with somebody else doing its pieces.
 *
 * @param steps the sum
 * @param work does one piece; called for all pieces of a batch at once
 */
export async function shared<Result>(
  steps: Steps<Result>,
  work: <Answer>(piece: Piece<Answer>) => Promise<Answer>,
): Promise<Result> {
  let turn = steps.next();
  while (turn.done !== true) turn = steps.next(await Promise.all(turn.value.map(work)));
  return turn.value;
}
