/** How long a study still takes, from what its pieces usually take and how fast these went. @module */

/**
 * Seconds of one core that pieces took on the demo study, rounded; those not named take next to
 * nothing, a notebook `NOTEBOOK`. Only their proportions matter.
 */
const USUAL: Readonly<Record<string, number>> = {
  house: 1,
  ranking: 6,
  store: 11,
  ways: 6,
  variants: 18,
  odds: 90,
};
const NOTEBOOK = 1.5;
const SMALL = 0.1;

/** s of a piece whose parts are told, and parts with fewer of which most are still to be asked for. */
const LONG = 30;
const MANY = 8;

/** s before which nothing is said: too little has been seen. */
const SOON = 1;

/** An estimate that learns. */
export interface TimeLeft {
  /** A piece is done; one that was there already says nothing of the speed. */
  done(piece: string, instant?: boolean): void;
  /**
   * So many parts of a piece are done, of those asked for so far; true where that is worth a word: in a
   * long piece, once it has asked for most of its parts.
   */
  part(piece: string, done: number, asked: number): boolean;
  /** ", about 12 s left", or nothing where that is not known. */
  text(): string;
  /** True for a piece that takes its time. */
  heavy(piece: string): boolean;
}

/**
 * Estimate over some pieces.
 *
 * @param pieces names of results and notebooks
 * @param now s, a clock
 */
export function timeLeft(
  pieces: readonly string[],
  now: () => number = () => performance.now() / 1000,
): TimeLeft {
  const usual = (piece: string) => USUAL[piece] ?? (/^\d/.test(piece) ? NOTEBOOK : SMALL);
  const open = new Set(pieces);
  const parts = new Map<string, number>();
  const start = now();
  let finished = 0;
  const shareOf = (piece: string) => parts.get(piece) ?? 0;
  return {
    done: (piece, instant = false) => {
      if (open.delete(piece) && !instant) finished += usual(piece);
    },
    part: (piece, done, asked) => {
      if (usual(piece) < LONG || asked < MANY) return false;
      parts.set(piece, done / asked);
      return true;
    },
    text: () => {
      const spent = now() - start;
      const underWay = [...open].reduce((sum, piece) => sum + shareOf(piece) * usual(piece), 0);
      const seen = finished + underWay;
      if (open.size === 0 || seen < SOON || spent < SOON) return "";
      const ahead = [...open].reduce((sum, piece) => sum + usual(piece), 0) - underWay;
      return `, about ${Math.max(1, Math.round(ahead * spent / seen))} s left`;
    },
    heavy: (piece) => usual(piece) >= 1,
  };
}
