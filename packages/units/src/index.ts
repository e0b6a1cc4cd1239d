export * from "./csv.ts";
export * from "./hz.ts";
export * from "./position.ts";
export * from "./utc.ts";
