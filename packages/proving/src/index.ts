export * from "./broadcastsOf.ts";
export * from "./dscTests.ts";
export * from "./evidence.ts";
export type { Expectation } from "./expectation.ts";
export * from "./expectationOf.ts";
export * from "./heardItem.ts";
export * from "./mayKeep.ts";
export * from "./verdict.ts";
export * from "./whenToListen.ts";
