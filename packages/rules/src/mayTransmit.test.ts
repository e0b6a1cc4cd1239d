import { describe, expect, it } from "vitest";
import { mayTransmit } from "./mayTransmit.ts";
import { spectrumAround } from "./spectrumAround.ts";

const speech = (khz: number) => spectrumAround(Math.round(khz * 1000), "J3E");
const ship = (khz: number) => mayTransmit(speech(khz), null).map((rights) => rights.ship);
const amateur = (khz: number) => mayTransmit(speech(khz), null).map((rights) => rights.amateur);

describe("mayTransmit (RR Art. 5)", () => {
	it("lets a ship send in the maritime bands of every Region, and says where they are shared", () => {
		expect(ship(4146)).toEqual(["yes", "yes", "yes"]);
		expect(ship(8101)).toEqual(["shared", "shared", "shared"]);
		expect(ship(2182)).toEqual(["yes", "yes", "yes"]);
	});

	it("keeps a ship off broadcasting, amateur, standard time and aeronautical bands", () => {
		for (const khz of [5950, 7100, 14_300, 9998, 6600]) expect(ship(khz)).toEqual(["no", "no", "no"]);
	});

	it("leaves the 2 MHz working bands to national assignment (47 CFR 80.373(b): 2638 all areas), and differs by Region", () => {
		expect(ship(2638)).toEqual(["shared", "national", "national"]);
		expect(ship(2079)).toEqual(["shared", "yes", "yes"]);
		expect(ship(5200)).toEqual(["no", "no", "no"]);
	});

	it("tells amateur bands by Region (47 CFR 97.301)", () => {
		expect(amateur(7250)).toEqual([false, true, false]);
		expect(amateur(3850)).toEqual([false, true, true]);
		expect(amateur(14_300)).toEqual([true, true, true]);
		expect(amateur(14_348)).toEqual([false, false, false]); // 14 348.35-14 350.7 leaves the band
	});

	it("answers for one Region, with how far a service reaches and a sentence", () => {
		const [rights, ...rest] = mayTransmit(speech(4436), 2);
		expect(rest).toEqual([]);
		expect(rights).toMatchObject({ region: 2, ship: "no", amateur: false });
		expect(rights?.services.map(({ service, covers }) => [service, covers])).toEqual([
			["maritime", "partly"],
			["fixed-mobile", "partly"],
		]);
		expect(rights?.sentence).toBe("Region 2: maritime mobile (in part), fixed and mobile (in part); a ship station may not send there.");
	});

	it("names the weakest confidence behind an answer", () => {
		const confidence = (region: 1 | 2 | 3) => mayTransmit(speech(2079), region)[0]?.services.map((one) => one.confidence);
		expect([confidence(1), confidence(2), confidence(3)]).toEqual([["verified"], ["verified"], ["memory"]]);
	});

	it("has no service above 30 MHz", () => {
		expect(mayTransmit(speech(50_000), 1)).toMatchObject([{ services: [], ship: "no", amateur: false }]);
	});
});
