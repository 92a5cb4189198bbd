/** Made-up results of every chapter that charts are drawn from in tests; no claim about any real house. */
export { hourly } from "./made.ts";
export * from "./climate/sample.ts";
export * from "./soil/sample.ts";
export * from "./house/sample.ts";
export * from "./tubes/sample.ts";
export * from "./headers/sample.ts";
export * from "./fan/sample.ts";
export * from "./store/sample.ts";
export * from "./measured/sample.ts";
