import { type BlockProblem, bestBlocks, pointsOf, type Solver } from "@skipwright/planner";
import { describe, expect, it } from "vitest";
import { anyBlocks, bruteBlocks, isAllowed, standingIn } from "./blockInstances.sample.ts";
import { highsSolve } from "./highsSolve.ts";
import { loadHighs } from "./loadHighs.ts";

const highs = await loadHighs();
/** In this thread: small models are solved in milliseconds. */
const solver: Solver = (model, options) => Promise.resolve(highsSolve(highs, { model, options }, () => undefined));

async function best(problem: BlockProblem, by: Solver | undefined = solver) {
	const answer = await bestBlocks(problem, by);
	if (answer.status === "none") throw new Error("nothing found");
	return answer;
}

describe("bestBlocks against brute force over all ways", () => {
	it("keeps as much of each tier and has as few points, whether all finds room or not", async () => {
		let whole = 0;
		let short = 0;
		for (let seed = 1; seed <= 250; seed++) {
			const problem = anyBlocks(seed);
			const answer = await best(problem);
			expect(answer.status, `seed ${seed}`).toBe("optimal");
			expect(isAllowed(problem, answer.blockOf), `seed ${seed}`).toBe(true);
			const standing = standingIn(problem, answer.blockOf);
			expect(standing, `seed ${seed}`).toEqual(bruteBlocks(problem));
			expect([answer.points, pointsOf(problem, answer.blockOf)], `seed ${seed}`).toEqual([-standing[4]!, -standing[4]!]);
			if (answer.blockOf.includes(null)) short++;
			else whole++;
		}
		expect(whole).toBeGreaterThan(50);
		expect(short).toBeGreaterThan(50);
	});

	it("without a solver finds a way that leaves nothing out or none, and never says that it is best when it is not", async () => {
		let found = 0;
		let proved = 0;
		for (let seed = 1; seed <= 400; seed++) {
			const problem = anyBlocks(seed);
			const answer = await bestBlocks(problem, undefined);
			if (answer.status === "none") continue;
			found++;
			expect(isAllowed(problem, answer.blockOf), `seed ${seed}`).toBe(true);
			expect(answer.blockOf.includes(null), `seed ${seed}`).toBe(false);
			if (answer.status !== "optimal") continue;
			proved++;
			expect(standingIn(problem, answer.blockOf), `seed ${seed}`).toEqual(bruteBlocks(problem));
		}
		expect(found).toBeGreaterThan(80);
		expect(proved).toBeGreaterThan(30);
	});
});

describe("what must not change the answer's worth", () => {
	it("names, and the order of items and blocks", async () => {
		let compared = 0;
		for (let seed = 500; seed < 560; seed++) {
			const problem = anyBlocks(seed);
			const standing = standingIn(problem, (await best(problem)).blockOf);
			const renamed = { ...problem, items: problem.items.map((item) => ({ ...item, family: `other ${item.family}` })) };
			const named = {
				...renamed,
				blocks: problem.blocks.map((block) => ({ ...block, held: block.held.map((one) => ({ ...one, family: `other ${one.family}` })) })),
			};
			expect(standingIn(named, (await best(named)).blockOf), `seed ${seed}`).toEqual(standing);
			const last = problem.blocks.length - 1;
			const turned = {
				...problem,
				blocks: problem.blocks.toReversed(),
				items: problem.items.toReversed().map((item) => ({ ...item, home: item.home === null ? null : last - item.home })),
			};
			expect(standingIn(turned, (await best(turned)).blockOf), `seed ${seed}`).toEqual(standing);
			expect(await best(problem)).toEqual(await best(problem));
			compared++;
		}
		expect(compared).toBe(60);
	});

	it("but a free place more never loses anything", async () => {
		let gained = 0;
		for (let seed = 600; seed < 660; seed++) {
			const problem = anyBlocks(seed);
			const standing = standingIn(problem, (await best(problem)).blockOf);
			const wider = {
				...problem,
				blocks: problem.blocks.map((block, i) => (i === 0 ? { ...block, free: block.free + 1 } : block)),
				bankFree: new Map([...problem.bankFree].map(([bank, free]) => [bank, free + 1])),
			};
			const after = standingIn(wider, (await best(wider)).blockOf);
			const at = standing.findIndex((one, i) => one !== after[i]);
			expect(at < 0 || after[at]! > standing[at]!, `seed ${seed}`).toBe(true);
			if (at >= 0 && at < 4) gained++;
		}
		expect(gained).toBeGreaterThan(5);
	});
});
