/** Started by sameBits.test.ts, as a program or as a worker: tells the digest in its own way. */
import { parentPort } from "node:worker_threads";
import { sameBits } from "./sameBits.sample.ts";

if (parentPort === null) process.stdout.write(sameBits());
else parentPort.postMessage(sameBits());
