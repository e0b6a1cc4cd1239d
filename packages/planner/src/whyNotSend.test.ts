import { profileNamed } from "@skipwright/set";
import { hz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { type SendingRights, whyNotSend } from "./whyNotSend.ts";

const RIGHTS: SendingRights = { profile: profileNamed("twin-180")!, shipLicence: true, amateurLicence: false, region: null };
const at = (khz: number) => hz(khz * 1_000);

describe("whyNotSend (RR Articles 5 and 25, Appendix 15)", () => {
	it("lets a ship send on its carriers, where other stations broadcast too", () => {
		expect(whyNotSend(at(4_146), "USB", RIGHTS)).toBeNull(); // also voice weather in New Zealand
		expect(whyNotSend(at(8_294), "USB", RIGHTS)).toBeNull();
	});

	it.each([
		["a distress carrier", 8_291, RIGHTS, /fall on distress and safety, 8 MHz/],
		["DSC distress from the voice dial that overlaps it", 2_186.5, RIGHTS, /fall on/],
		["an amateur band without licence", 14_300, RIGHTS, /no amateur licence/],
		["an amateur band of one Region only", 7_277, { ...RIGHTS, amateurLicence: true }, /no maritime band/],
		["a broadcasting band", 9_600, RIGHTS, /no maritime band/],
		["a standard-time band", 10_000, RIGHTS, /no maritime band/],
		["beyond the transmitter", 28_000, RIGHTS, /set cannot transmit/],
		["without a ship licence", 8_294, { ...RIGHTS, shipLicence: false }, /no ship station licence/],
	] as const)("keeps %s silent", (_what, khz, rights, why) => {
		expect(whyNotSend(at(khz), "USB", rights)).toMatch(why);
	});

	it("lets a licensed amateur send in an amateur band, and only there", () => {
		const amateur = { ...RIGHTS, amateurLicence: true, shipLicence: false };
		expect(whyNotSend(at(14_300), "USB", amateur)).toBeNull();
		expect(whyNotSend(at(7_277), "LSB", { ...amateur, region: 2 })).toBeNull(); // 47 CFR 97.301: Region 2 has 7200-7300
		expect(whyNotSend(at(8_294), "USB", amateur)).toMatch(/no ship station licence/);
	});
});
