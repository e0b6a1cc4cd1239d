import { readFileSync } from "node:fs";
import { join } from "node:path";
import { log10, readCsv } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { f2AboveMufDb } from "./aboveMuf.ts";
import { cosElevation, elevationDeg, legLength, secIncidence, slantKm } from "./elevation.ts";
import { f2Mirror, mirrorKm, simpleMirrorKm } from "./mirrorHeight.ts";
import { eMufMHz, eRays } from "./mufE.ts";
import { distanceShare, f2Layer, f2MufMHz, longestHopKm } from "./mufF2.ts";
import { hopOf } from "./pathHop.ts";
import { screeningMHz } from "./screening.ts";
import { FREE_SPACE_DB } from "./skyWave.ts";

const FILE = "sky-steps.csv";
const INPUTS = ["foF2_MHz", "M3000F2", "foE_MHz", "fH_MHz", "R12", "hop_km", "f_MHz"];
/** Half a unit of the last printed place, and a little for the rounding of what went before it. */
const CEILINGS: Readonly<Record<string, number>> = {
	B: 5.1e-5,
	dmax_km: 5.1e-5,
	Cd: 5.1e-5,
	C3000: 5.1e-5,
	F2_basic_MUF_MHz: 5.1e-5,
	hr_simple_km: 5.1e-5,
	H_km: 5.1e-5,
	hr_km: 5.1e-4,
	elevation_deg: 5.1e-4,
	i110_deg: 5.1e-4,
	fs_MHz: 5.1e-4,
	E_MUF_MHz: 5.1e-4,
	slant_range_km: 5.1e-4,
	free_space_loss_dB: 5.1e-4,
	Lm_dB: 5.1e-4,
};

/** The same quantities by the product's own steps; null where a hop is too long for the E layer. */
function steps(row: Readonly<Record<string, number>>): Readonly<Record<string, number | string | null>> {
	const input = (name: string) => row[name] ?? Number.NaN;
	const [foF2MHz, m3000, foEMHz, gyroMHz] = [input("foF2_MHz"), input("M3000F2"), input("foE_MHz"), input("fH_MHz")];
	const [hopKm, fMHz] = [input("hop_km"), input("f_MHz")];
	const layer = f2Layer({ foF2MHz, m3000, foEMHz, gyroMHz });
	const longest = longestHopKm(layer);
	const mufMHz = f2MufMHz(layer, hopKm, longest);
	const mirror = f2Mirror({ foF2MHz, m3000, foEMHz, sunspots: input("R12") });
	const height = mirrorKm(mirror, hopKm, fMHz); // the rows carry the equation on above the MUF, where modes keep the ray of the MUF
	const hop = hopOf(hopKm, 1);
	const leg = legLength(hop, height);
	const cosine = cosElevation(hop, leg);
	const slant = slantKm(hop, height, leg);
	const ray = eRays(hopKm)[0];
	return {
		B: layer.b,
		dmax_km: longest,
		Cd: distanceShare(hopKm, longest),
		C3000: distanceShare(3000, longest),
		F2_basic_MUF_MHz: mufMHz,
		hr_simple_km: simpleMirrorKm(m3000),
		H_km: mirror.h,
		height_branch: mirror.close !== null ? "c" : fMHz >= foF2MHz ? "a" : "b",
		hr_km: height,
		elevation_deg: elevationDeg(hop, height),
		i110_deg: (Math.acos(1 / secIncidence(cosine, 110)) * 180) / Math.PI,
		fs_MHz: screeningMHz(foEMHz, cosine),
		E_MUF_MHz: ray === undefined || ray.hop.count > 1 ? null : eMufMHz(foEMHz, ray),
		slant_range_km: slant,
		free_space_loss_dB: FREE_SPACE_DB + 20 * log10(fMHz * slant),
		Lm_dB: f2AboveMufDb(fMHz, mufMHz, hopKm),
	};
}

describe("the steps of a sky wave", () => {
	it("give the 90 rows of the digest of ITU-R P.533's sections 3 to 5, every column, to the last printed place", () => {
		const text = readFileSync(join(import.meta.dirname, "..", "truth", FILE), "utf8");
		const { rows } = readCsv(FILE, text, { required: [...INPUTS, "height_branch", ...Object.keys(CEILINGS)] });
		const worst: Record<string, number> = {};
		let branches = 0;
		let numbers = 0;
		let blanks = 0;
		for (const { cells } of rows) {
			const found = steps(Object.fromEntries(INPUTS.map((name) => [name, Number(cells[name])])));
			expect(found["height_branch"]).toBe(cells["height_branch"]);
			branches++;
			for (const name of Object.keys(CEILINGS)) {
				if (cells[name] === "") {
					expect(found[name], name).toBeNull();
					blanks++;
					continue;
				}
				worst[name] = Math.max(worst[name] ?? 0, Math.abs(Number(found[name]) - Number(cells[name])));
				numbers++;
			}
		}
		expect({ branches, numbers, blanks }).toEqual({ branches: 90, numbers: 1314, blanks: 36 });
		console.log("worst errors of 90 rows:", worst);
		for (const [name, ceiling] of Object.entries(CEILINGS)) expect(worst[name], name).toBeLessThan(ceiling);
	});
});
