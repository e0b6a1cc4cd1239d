import { directory } from "@skipwright/directory";
import type { Heard } from "@skipwright/modem";
import { profileNamed } from "@skipwright/set";
import { describe, expect, it } from "vitest";
import type { Expectation } from "./expectation.ts";
import { expectationOf } from "./expectationOf.ts";
import { chartItem, dscItem, teletypeItem, textItem, toneItem, voiceItem } from "./heardItems.sample.ts";
import { mayKeep } from "./mayKeep.ts";

const OWN = "299123456";
const ITEMS: readonly Heard[] = [dscItem({ to: "299000111" }), textItem(), teletypeItem(), chartItem(), toneItem(600), voiceItem()];

/** Of each service one. */
const EXPECTATIONS = [...Map.groupBy(directory().listings, ({ service }) => service)].map(([service, listings]): [string, Expectation] => {
	const found = expectationOf(listings[0]!, directory(), profileNamed("receiver-100")!);
	if ("cannot" in found) throw new Error(found.cannot);
	return [service, found];
});

describe("mayKeep", () => {
	it("keeps of each service's broadcast its own kind alone, and nothing of what is no broadcast", () => {
		const kept = EXPECTATIONS.flatMap(([service, expectation]) =>
			ITEMS.filter((item) => mayKeep(expectation, item, OWN).may).map(({ kind }) => `${service} ${kind}`),
		);
		expect(EXPECTATIONS).toHaveLength(10);
		expect(kept.sort()).toEqual([
			"fax chart",
			"navtex text",
			"nbdp-msi text",
			"news-broadcast chart",
			"rtty-weather teletype",
			"time-signal tone",
			"voice-weather voice",
			"volmet voice",
		]);
	});

	it("keeps no text without the head of a broadcast, on no service", () => {
		const nameless = textItem({ identity: null, text: "DEAR ALL" });
		expect(EXPECTATIONS.filter(([, expectation]) => mayKeep(expectation, nameless, OWN).may)).toEqual([]);
		const texts = EXPECTATIONS.filter(([, { kind }]) => kind === "text");
		const whys = texts.filter(([, { isToAll }]) => isToAll).map(([, expectation]) => mayKeep(expectation, nameless, OWN).why);
		expect(whys).toHaveLength(2);
		for (const why of whys) expect(why).toMatch(/no head of a broadcast .*Article 17/);
	});

	it("says why not, with the rule", () => {
		for (const [service, expectation] of EXPECTATIONS) {
			for (const item of ITEMS) {
				const { may, why } = mayKeep(expectation, item, OWN);
				expect(why, `${service} ${item.kind}`).toMatch(may ? /^It is a broadcast to all\.$/ : /Article 17 \(from memory\)/);
			}
		}
	});

	const [, watch] = EXPECTATIONS.find(([service]) => service === "dsc-watch")!;
	const [, navtex] = EXPECTATIONS.find(([service]) => service === "navtex")!;
	const kept = (call: Parameters<typeof dscItem>[0], change: Parameters<typeof dscItem>[1] = {}, own: string | null = OWN) =>
		[watch, navtex].map((expectation) => mayKeep(expectation, dscItem(call, change), own).may);

	it.each([
		["the answer to the ship's own test", kept({}), true],
		["the ship's own test as sent", kept({ from: OWN, to: "006010001", end: "acknowledgement asked" }), true],
		["another ship's test", kept({ to: "299000111" }), false],
		["a test asked of the ship by another", kept({ end: "acknowledgement asked" }), false],
		["a routine call to the ship", kept({ category: "routine", telecommand1: "J3E telephony" }), false],
		["a distress alert", kept({ format: "distress alert", category: null, telecommand1: null, to: null, from: OWN }), false],
		["a call to all ships", kept({ format: "all ships", category: "safety", telecommand1: "J3E telephony", to: null }), false],
		["the answer with errors in it", kept({}, { ok: false }), false],
		["a call that could not be read", kept({}, { call: null }), false],
		["the answer, where the job names no MMSI", kept({}, {}, null), false],
	] as const)("selective calls: %s", (_, found, may) => {
		expect(found).toEqual([may, may]);
	});

	it("says that no call is the ship's own where the job names no MMSI", () => {
		expect(mayKeep(watch, dscItem(), null).why).toMatch(/names no MMSI/);
	});
});
