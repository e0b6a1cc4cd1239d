import { expect, test } from "vitest";
import { CAUTIONS, RECEIVER_CAUTIONS } from "./cautions.ts";

/** What must be said before anyone transmits: the project's own list (common practice, no single source). */
const MUST_SAY = [
	/ship and the operator licence/,
	/national rules/,
	/approved for the service/,
	/no coast station's frequency/,
	/amateur licence/,
	/harbour/,
	/Tuning up radiates: listen first, low power/,
	/Never test with the distress function/,
	/Distress .* guarded/,
	/receive only/,
	/High voltage at tuner, lead and antenna/,
	/nobody aloft/,
	/implants/,
	/floors: measure where people sit/,
	/fuelling or near gas or explosives/,
	/autopilot/,
	/isolated and tagged/,
	/thunder, antenna disconnected and grounded/,
	/local codes, by competent hands/,
	/Official publications prevail/,
	/monthly medians, not promises/,
	/fitter and the skipper decide/,
];

test("every caution is there", () => {
	const text = CAUTIONS.flatMap(({ lines }) => lines).join("\n");
	const missing = MUST_SAY.filter((pattern) => !pattern.test(text));
	expect(MUST_SAY).toHaveLength(22);
	expect(missing).toEqual([]);
});

test("a receiver's cautions keep antenna, thunder, supply and what the paper is worth, and say nothing of sending with it", () => {
	const lines = RECEIVER_CAUTIONS.flatMap(({ lines }) => lines);
	const kept = [
		/antenna/,
		/thunder, antenna disconnected and grounded/,
		/isolated and tagged/,
		/local codes/,
		/Official publications prevail/,
	];
	for (const pattern of kept) expect(lines.filter((line) => pattern.test(line))).not.toEqual([]);
	expect(lines).toHaveLength(6);
	expect(lines.join(" ")).not.toMatch(/licence|transmit|tuning up|distress|autopilot|receive only/i);
});
