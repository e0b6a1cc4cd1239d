import { parentPort, workerData } from "node:worker_threads";
import type { MipAnswer, SolverProgress } from "@skipwright/planner";
import { type HighsTask, highsSolve } from "./highsSolve.ts";
import { loadHighs } from "./loadHighs.ts";

/** What the thread of one solve says: progress as it comes, then the answer. */
export type HighsMessage = { readonly progress: SolverProgress } | { readonly answer: MipAnswer };

const post = (message: HighsMessage) => parentPort?.postMessage(message);

post({ answer: highsSolve(await loadHighs(), workerData as HighsTask, (progress) => post({ progress })) });
