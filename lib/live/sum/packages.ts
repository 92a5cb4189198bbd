/** Packages of the worker that the reader of weather files, which runs behind it, takes from it. @module */
import { Matrix, solve } from "ml-matrix";
import { getSpa, SPA_ZA } from "nrel-spa";
import psychrolib from "psychrolib";

/** By the name under which the reader's script finds them. */
export const PACKAGES = { Matrix, solve, getSpa, SPA_ZA, psychrolib } as const;
