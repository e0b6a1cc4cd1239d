import type { Profile, SheetStep } from "@skipwright/set";

/** Consecutive steps of the sheet that lie in one block of the set. */
export interface StepBlock {
	readonly bank: string;
	/** 1, 2, 3 ... within the bank. */
	readonly number: number;
	/** First and last place of the block; null for a place or bank that the set does not have. */
	readonly places: { readonly from: number; readonly to: number } | null;
	/** The same block was left and is taken up again: steps are never put in another order. */
	readonly resumed: boolean;
	readonly steps: readonly SheetStep[];
}

/** Steps in their order of keying, split wherever the bank or the block changes. */
export function blocksOf(steps: readonly SheetStep[], profile: Profile): readonly StepBlock[] {
	const seen = new Set<string>();
	const blocks: (StepBlock & { steps: SheetStep[] })[] = [];
	for (const step of steps) {
		const spot = spotOf(step, profile);
		const last = blocks.at(-1);
		if (last !== undefined && last.bank === step.bank && last.number === spot.number) {
			last.steps.push(step);
			continue;
		}
		const key = JSON.stringify([step.bank, spot.number]);
		blocks.push({ bank: step.bank, ...spot, resumed: seen.has(key), steps: [step] });
		seen.add(key);
	}
	return blocks;
}

function spotOf({ bank: id, place }: SheetStep, { banks }: Profile): Pick<StepBlock, "number" | "places"> {
	const bank = banks.find((candidate) => candidate.id === id);
	if (bank === undefined || place < 1 || place > bank.places) return { number: 0, places: null };
	const number = Math.ceil(place / bank.blockLength);
	return {
		number,
		places: { from: (number - 1) * bank.blockLength + 1, to: Math.min(number * bank.blockLength, bank.places) },
	};
}
