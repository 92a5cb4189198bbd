/** Modes of the slice in the Krylov space, and those of the states kept with their shapes. @module */
import { Matrix } from "ml-matrix";
import { symmetricProducts, weightedSums } from "../../../basics/linear/many_vectors.ts";
import { dot, eigen } from "../../../basics/linear/vectors.ts";
import type { ConductionOperator } from "../../ground/operator.ts";
import { applyConduction } from "./conduction.ts";
import type { KrylovField } from "./krylov.ts";
import { type Port, seenBy } from "./ports.ts";
import { orthonormalWeights } from "./whitening.ts";

/** Square of what a field must add to those before it, as part of its own. */
const LEAST_ADDED = 1e-10;

/** 1/s: a slower mode is as good as constant when it comes to which directions are kept. */
const SLOWEST = 1e-13;

/** Modes of the whole space. */
export interface FullModes {
  /** 1/s */
  readonly rates: readonly number[];
  /** weights of the fields, one column a mode */
  readonly weights: Matrix;
  /** port by mode */
  readonly gains: Matrix;
  /** heat content by mode */
  readonly content: Float64Array;
}

/** What each port sees of each field, field by port. */
function seenOfFields(
  fields: readonly KrylovField[],
  ports: readonly Port[],
  root: Float64Array,
): Matrix {
  return new Matrix(fields.map(({ values }) => {
    const field = values.map((value, c) => value / root[c]!);
    return ports.map((port) => seenBy(port, field));
  }));
}

/** Conduction among the fields: K·T = inputs − σ·M·T needs no product over the cells. */
function conductionAmong(
  fields: readonly KrylovField[],
  products: Matrix,
  seen: Matrix,
): Matrix {
  const among = seen.mmul(new Matrix(fields.map(({ inputs }) => inputs)).transpose());
  fields.forEach(({ shift }, j) => {
    fields.forEach((_, i) => among.set(i, j, among.get(i, j) - shift * products.get(i, j)));
  });
  return among.add(among.transpose()).mul(0.5);
}

/** Modes of the projected slice, with gains of the ports and heat content. */
export function fullModes(
  operator: ConductionOperator,
  fields: readonly KrylovField[],
  ports: readonly Port[],
): FullModes {
  const root = operator.capacity.map(Math.sqrt);
  const products = symmetricProducts(fields.map(({ values }) => values));
  const seen = seenOfFields(fields, ports, root);
  const whitened = orthonormalWeights(products, LEAST_ADDED);
  const among = conductionAmong(fields, products, seen);
  const { values, vectors } = eigen(whitened.transpose().mmul(among).mmul(whitened));
  const weights = whitened.mmul(vectors);
  const constant = Matrix.rowVector(products.getRow(0)).mul(Math.sqrt(dot(root, root)));
  return {
    rates: values.map((value) => Math.max(value, SLOWEST)),
    weights,
    gains: seen.transpose().mmul(weights),
    content: Float64Array.from(constant.mmul(weights).getRow(0)),
  };
}

/** States kept: modes of the conduction among the kept directions. */
export interface KeptStates {
  /** 1/s */
  readonly rates: Float64Array;
  /** temperature by cell, one a state */
  readonly shapes: readonly Float64Array[];
}

/**
 * States of the kept directions: made orthonormal over the cells again, for rounding grows in the
 * products of fields that are nearly alike, and K projected on them cell by cell.
 *
 * @param operator slice
 * @param fields of the space, the constant one first
 * @param modes of the space
 * @param kept directions over the modes, the heat content first
 */
export function keptStates(
  operator: ConductionOperator,
  fields: readonly KrylovField[],
  modes: FullModes,
  kept: readonly Float64Array[],
): KeptStates {
  const root = operator.capacity.map(Math.sqrt);
  const directions = weightedSums(
    fields.map(({ values }) => values),
    modes.weights.mmul(new Matrix(kept.map((direction) => direction)).transpose()),
  );
  directions[0] = fields[0]!.values;
  const whitened = orthonormalWeights(symmetricProducts(directions), 0);
  const conducted = directions.map((direction) => applyConduction(operator, direction, root));
  const among = symmetricProducts(directions, conducted);
  const { values, vectors } = eigen(whitened.transpose().mmul(among).mmul(whitened));
  const shapes = weightedSums(directions, whitened.mmul(vectors));
  for (const shape of shapes) for (let c = 0; c < shape.length; c++) shape[c]! /= root[c]!;
  return { rates: Float64Array.from(values), shapes };
}
