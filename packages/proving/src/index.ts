export * from "./broadcastsOf.ts";
export * from "./dscTests.ts";
export * from "./evidence.ts";
export type { Expectation } from "./expectation.ts";
export * from "./expectationOf.ts";
export * from "./mayKeep.ts";
export * from "./placeVerdict.ts";
export { type Predicted, RESULTS, type Result, type Verdict, type VerdictOptions, verdict } from "./verdict.ts";
export * from "./whenToListen.ts";
