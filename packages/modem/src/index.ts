export * from "./receiver.ts";
