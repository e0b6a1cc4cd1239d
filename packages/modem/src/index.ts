export * from "./receiver.ts";
export * from "./signal/join.ts";
export * from "./signal/keyed.ts";
export * from "./signal/noise.ts";
export * from "./signal/random.ts";
export * from "./signal/resample.ts";
