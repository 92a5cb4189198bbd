/** Stands where a matrix package would bring a decomposition that the year of a store never asks for. @module */

/** Refuses to be made. */
export default class NoDecomposition {
  constructor() {
    throw new Error("Cannot decompose: the page's script has no singular values");
  }
}
