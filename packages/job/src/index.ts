export * from "./changeJob.ts";
export * from "./readGpx.ts";
export * from "./readJob.ts";
export * from "./resolveJob.ts";
export { JOB_FORMAT, JOB_VERSION, type Job, type JobInput, JobSchema, type OwnListing, type Pin } from "./schema.ts";
export * from "./utcTime.ts";
export * from "./voyage.ts";
export * from "./voyageSamples.ts";
