import { Worker } from "node:worker_threads";
import type { Solver } from "@skipwright/planner";
import type { HighsTask } from "./highsSolve.ts";
import type { HighsMessage } from "./highsWorker.ts";

/**
 * Solves by HiGHS in a worker thread: a fresh one each time, as its memory never shrinks, and because ending it is what stops a solve.
 * @throws Error where HiGHS refuses the model
 */
export const highsSolver: Solver = (model, { onProgress, signal, ...options }) => {
	if (signal?.aborted === true) return Promise.resolve({ status: "none", bound: null });
	const workerData: HighsTask = { model, options };
	return new Promise((resolve, reject) => {
		const worker = new Worker(new URL("./highsWorker.ts", import.meta.url), { workerData });
		let bound: number | null = null;
		const stop = () => end(() => resolve({ status: "none", bound }));
		const end = (settle: () => void) => {
			signal?.removeEventListener("abort", stop);
			worker.terminate().then(settle, reject);
		};
		signal?.addEventListener("abort", stop);
		worker.on("error", (error) => end(() => reject(error)));
		worker.on("message", (message: HighsMessage) => {
			if ("answer" in message) end(() => resolve(message.answer));
			else {
				bound = message.progress.bound ?? bound;
				onProgress?.(message.progress);
			}
		});
	});
};
