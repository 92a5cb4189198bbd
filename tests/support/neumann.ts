/** The two-phase freezing front of Neumann, exact: Carslaw & Jaeger 1959 [carslaw-jaeger-1959] §11.2 (xi). */

/** erf by its series, to rounding for |x| < 3. */
export function erf(x: number): number {
  let term = x;
  let sum = x;
  for (let n = 1; n < 80; n++) {
    term *= -x * x / n;
    sum += term / (2 * n + 1);
  }
  return 2 * sum / Math.sqrt(Math.PI);
}

/** Conductivity and heat capacity of a phase. */
export interface Phase {
  readonly conductivity: number;
  readonly heatCapacity: number;
}

/** A half space at `start` above 0 degC whose face is held at `surface` below 0 degC. */
export interface NeumannCase {
  readonly frozen: Phase;
  readonly unfrozen: Phase;
  /** J/m³ */
  readonly latentHeat: number;
  readonly surface: number;
  readonly start: number;
}

const diffusivity = (phase: Phase) => phase.conductivity / phase.heatCapacity;

/** λ of the front X = 2λ√(a t), a of the frozen soil. */
export function neumannRoot(given: NeumannCase): number {
  const { frozen, unfrozen, latentHeat, surface, start } = given;
  const ratio = Math.sqrt(diffusivity(frozen) / diffusivity(unfrozen));
  const warm = Math.sqrt(
    unfrozen.conductivity * unfrozen.heatCapacity / frozen.conductivity / frozen.heatCapacity,
  );
  const left = (l: number) =>
    Math.exp(-l * l) / erf(l) -
    warm * start / -surface * Math.exp(-((l * ratio) ** 2)) / (1 - erf(l * ratio)) -
    l * latentHeat * Math.sqrt(Math.PI) / frozen.heatCapacity / -surface;
  let [low, high] = [1e-3, 2];
  while (high - low > 1e-12) {
    const middle = (low + high) / 2;
    if (left(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}

/** Depth of the front, m, heat taken out of the face so far, J/m², and temperature by depth. */
export interface NeumannFront {
  readonly front: number;
  readonly taken: number;
  readonly temperature: (depth: number) => number;
}

/** The solution at a time. */
export function neumannFront(given: NeumannCase, seconds: number): NeumannFront {
  const { frozen, unfrozen, surface, start } = given;
  const root = neumannRoot(given);
  const spread = 2 * Math.sqrt(diffusivity(frozen) * seconds);
  const ratio = Math.sqrt(diffusivity(frozen) / diffusivity(unfrozen));
  const front = root * spread;
  return {
    front,
    taken: 2 * frozen.conductivity * -surface / erf(root) *
      Math.sqrt(seconds / Math.PI / diffusivity(frozen)),
    temperature: (depth: number) =>
      depth < front
        ? surface - surface * erf(depth / spread) / erf(root)
        : start - start * (1 - erf(depth / spread * ratio)) / (1 - erf(root * ratio)),
  };
}
