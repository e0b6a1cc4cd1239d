export type { LeftOut, Want } from "./candidate.ts";
export * from "./handbookHearing.ts";
export * from "./hearing.ts";
export * from "./plan.ts";
export * from "./plannedRows.ts";
export * from "./readPlan.ts";
export type { Served } from "./served.ts";
