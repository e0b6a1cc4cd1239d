export * from "./csv.ts";
export * from "./elementary.ts";
export * from "./hz.ts";
export * from "./position.ts";
export * from "./utc.ts";
