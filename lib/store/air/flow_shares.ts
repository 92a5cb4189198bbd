/** Flow of each tube, and whether half the house will do. @module */
import type { StoreRequest } from "../request.ts";

/** Most by which the flows of a mirrored pair may differ, over the mean, to be run as one. */
const PAIR_DIFFERENCE = 0.1;
/** The same where stores are compared, which half a slice runs in a third of the time. */
const PAIR_DIFFERENCE_ROUGHLY = 0.15;

/** Place of each tube's mirror image about the middle of the house; null where one has none. */
function mirrorImages(request: StoreRequest): number[] | null {
  const { positions } = request.tubes;
  const images = positions.map((tube) =>
    positions.findIndex((other) =>
      Math.abs(other.x + tube.x) < 1e-6 && Math.abs(other.depth - tube.depth) < 1e-6
    )
  );
  return images.includes(-1) ? null : images;
}

/**
 * Flow of each tube, and whether half the slice will do: tubes must mirror about the middle, and the
 * flows of a pair nearly so. A pair is run at its mean flow; what that misses is of second order in
 * the difference (5 % either side of the mean: below 0.1 % of the heat; 7.5 %: docs/store.md).
 */
export function flowShares(
  request: StoreRequest,
): { readonly half: boolean; readonly shares: number[] } {
  const shares = request.tubes.positions.map((_, k) => request.headers.shares[k] ?? 1);
  const images = mirrorImages(request);
  const most = request.rough === true ? PAIR_DIFFERENCE_ROUGHLY : PAIR_DIFFERENCE;
  const half = images !== null &&
    images.every((image, k) => Math.abs(shares[image]! - shares[k]!) <= most);
  return {
    half,
    shares: half ? shares.map((share, k) => (share + shares[images[k]!]!) / 2) : shares,
  };
}
