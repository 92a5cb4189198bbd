/**
 * Modified Bessel functions of order 0 and 1 for complex arguments with a positive real part, as the
 * periodic heat flow round a tube needs them.
 *
 * @module
 */
import { Complex } from "complex.js";

const CIRCLE_POINTS = 96;
const LINE_STEP = 0.1;

/**
 * Modified Bessel function of the first kind.
 *
 * I_ν(z) = (1/π)·∫₀^π exp(z·cos θ)·cos νθ dθ, by the trapezoid rule, which converges exponentially for
 * a periodic integrand.
 *
 * Source: Abramowitz & Stegun 1964 [abramowitz-stegun-1964], 9.6.19. Valid for: |z| ≤ 40.
 *
 * @param order 0 or 1
 * @param z argument
 * @returns value
 */
export function besselI(order: 0 | 1, z: Complex): Complex {
  let sum = new Complex(0, 0);
  for (let k = 0; k <= CIRCLE_POINTS; k++) {
    const angle = Math.PI * k / CIRCLE_POINTS;
    const weight = k === 0 || k === CIRCLE_POINTS ? 0.5 : 1;
    sum = sum.add(z.mul(Math.cos(angle)).exp().mul(weight * Math.cos(order * angle)));
  }
  return sum.div(CIRCLE_POINTS);
}

/**
 * Modified Bessel function of the second kind.
 *
 * K_ν(z) = ∫₀^∞ exp(−z·cosh t)·cosh νt dt, by the trapezoid rule, which converges exponentially here.
 *
 * Source: Abramowitz & Stegun 1964 [abramowitz-stegun-1964], 9.6.24. Valid for: Re z > 0, |arg z| ≤
 * π/4.
 *
 * @param order 0 or 1
 * @param z argument
 * @returns value
 */
export function besselK(order: 0 | 1, z: Complex): Complex {
  const last = Math.acosh(1 + 45 / z.re);
  let sum = z.neg().exp().mul(0.5);
  for (let t = LINE_STEP; t <= last; t += LINE_STEP) {
    sum = sum.add(z.mul(-Math.cosh(t)).exp().mul(Math.cosh(order * t)));
  }
  return sum.mul(LINE_STEP);
}
