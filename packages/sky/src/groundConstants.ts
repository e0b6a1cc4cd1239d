import { MEMORY } from "./fromMemory.ts";

/** What the ground wave sees of the surface it runs over. */
export interface Ground {
	/** S/m. */
	readonly conductivity: number;
	/** Relative to vacuum. */
	readonly permittivity: number;
}

export type GroundId = "sea" | "wetGround" | "land" | "mediumDryGround" | "dryGround" | "veryDryGround" | "freshWater" | "lowSalinitySea";

const { dry, veryDry, freshWater, lowSalinitySea } = MEMORY.groundConstants.value;

/** The first four: ITU-R P.368-7, the constants its curves are drawn for. The rest: `MEMORY.groundConstants`. */
export const GROUNDS: Readonly<Record<GroundId, Ground>> = {
	sea: { conductivity: 5, permittivity: 70 },
	wetGround: { conductivity: 0.01, permittivity: 30 },
	land: { conductivity: 0.003, permittivity: 22 },
	mediumDryGround: { conductivity: 0.001, permittivity: 15 },
	dryGround: { conductivity: dry[0], permittivity: dry[1] },
	veryDryGround: { conductivity: veryDry[0], permittivity: veryDry[1] },
	freshWater: { conductivity: freshWater[0], permittivity: freshWater[1] },
	lowSalinitySea: { conductivity: lowSalinitySea[0], permittivity: lowSalinitySea[1] },
};
