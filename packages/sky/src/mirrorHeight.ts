import { exp, log, pow } from "@skipwright/units";

/** km. The E layer as a mirror, ITU-R P.533 section 5.1. */
export const E_MIRROR_KM = 110;
/** km. Caps of the F2 layer's mirror: ITU-R P.533 equation (2) and section 5.1. */
const HIGHEST_SIMPLE_KM = 500;
export const HIGHEST_MIRROR_KM = 800;
/** foF2/foE over which the layers stand apart: other equations then hold. */
const LAYERS_APART = 3.33;
const LN_FALL = log(2.4);

/** km. Mirror of P.533 equation (2), used to find the least number of hops. */
export function simpleMirrorKm(m3000: number): number {
	return Math.min(1490 / m3000 - 176, HIGHEST_SIMPLE_KM);
}

/** The F2 layer over one control point in one hour, as a mirror sees it. */
export interface F2Mirror {
	readonly foF2MHz: number;
	/** H of P.533 section 5.1, km. */
	readonly h: number;
	/** Where the layers stand close, the mirror is `baseKm` + `slope` hop, at all frequencies; null where they stand apart. */
	readonly close: { readonly baseKm: number; readonly slope: number } | null;
}

export interface MirrorMeasured {
	readonly foF2MHz: number;
	readonly m3000: number;
	readonly foEMHz: number;
	/** R12. */
	readonly sunspots: number;
}

export function f2Mirror({ foF2MHz, m3000, foEMHz, sunspots }: MirrorMeasured): F2Mirror {
	const x = foF2MHz / foEMHz;
	const y = Math.max(x, 1.8);
	const h = 1490 / (m3000 + 0.18 / (y - 1.4) + (0.096 * (sunspots - 25)) / 150) - 316;
	if (x > LAYERS_APART) return { foF2MHz, h, close: null };
	const j = 16.07 + y * (-16.13 + y * (5.863 - 0.7126 * y));
	const slope = 8e-5 * (h - 80) * (1 + 11 * pow(y, -2.2)) + 1.2e-3 * h * pow(y, -3.6);
	return { foF2MHz, h, close: { baseKm: 115 + h * j, slope } };
}

/**
 * km. Height of the mirror that stands for the F2 layer. The model jumps where the layers part and, on hops of 300 to 1000 km, where
 * the frequency passes foF2, by up to 60 km.
 * @param fMHz above the mode's MUF give the MUF: `MEMORY.rayAboveMuf`
 */
export function mirrorKm({ foF2MHz, h, close }: F2Mirror, hopKm: number, fMHz: number): number {
	if (close !== null) return Math.min(close.baseKm + close.slope * hopKm, HIGHEST_MIRROR_KM);
	const ratio = fMHz / foF2MHz;
	return Math.min(ratio >= 1 ? overFoF2Km(h, hopKm, ratio) : underFoF2Km(h, hopKm, ratio), HIGHEST_MIRROR_KM);
}

function overFoF2Km(h: number, hopKm: number, r: number): number {
	const e = 0.6 + r * (-0.7506 + r * (0.687 - 0.09707 * r));
	const f = r <= 1.71 ? -10.91 + r * (33.5 + r * (-32.03 + r * (12.95 - 1.862 * r))) : 1.21 + 0.2 * r;
	const g = r <= 3.7 ? -44.73 + r * (90.47 + r * (-63.15 + r * (19.5 - 2.102 * r))) : 19.25;
	const skipKm = 160 + (h + 43) * g;
	const past = (hopKm - skipKm) / (h + 140);
	const low = 140 + (h - 47) * e;
	const rise = 150 + (h - 17) * f - low;
	return rise >= 0 && past >= 0 ? low + rise * exp(-LN_FALL * past) : low + rise;
}

function underFoF2Km(h: number, hopKm: number, ratio: number): number {
	const z = Math.max(ratio, 0.1);
	const low = 151 + (h - 47) * (0.1936 + z * (0.00583 + 0.1906 * z));
	const rise = 141 + (h - 24) * (0.162 + z * (0.883 + 0.645 * z)) - low;
	if (rise < 0) return low + rise;
	const d = Math.min((0.115 * hopKm) / (z * (h + 140)), 0.65);
	return low + rise * (1 + d * (-0.378 + d * (-8.834 + d * (15.75 - 7.535 * d))));
}
