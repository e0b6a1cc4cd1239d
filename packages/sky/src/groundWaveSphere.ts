import { pow } from "@skipwright/units";
import { add, type Complex, divided, scaled, squareRoot } from "./complex.ts";
import type { Ground } from "./groundConstants.ts";

/** km. An earth of 4/3 its radius stands in for air whose refractivity falls with height (ITU-R P.368's atmosphere, within 0.3 dB at MF and HF). */
const EFFECTIVE_RADIUS_KM = (4 / 3) * 6371;
/** m/s and F/m. CODATA 2018. */
const LIGHT_M_PER_S = 299_792_458;
const VACUUM_PERMITTIVITY = 8.8541878128e-12;

/** A smooth sphere at one frequency, in the terms of van der Pol's, Bremmer's and Fock's diffraction series; time goes as exp(+j omega t). */
export interface DiffractionSphere {
	/** How badly the surface conducts: 0 perfectly, far above 1 hardly. */
	readonly q: Complex;
	/** The scaled distance x of 1 km; from x = 1 or so on lies the shadow. */
	readonly xPerKm: number;
}

/** Vertical polarisation, sender and receiver on the ground. */
export function diffractionSphere(fMHz: number, { conductivity, permittivity }: Ground): DiffractionSphere {
	const omega = 2 * Math.PI * fMHz * 1e6;
	const waveNumberPerKm = (omega / LIGHT_M_PER_S) * 1000;
	const indexSquared = { re: permittivity, im: -conductivity / (omega * VACUUM_PERMITTIVITY) };
	const impedance = divided(squareRoot(add(indexSquared, { re: -1, im: 0 })), indexSquared);
	const m = pow((waveNumberPerKm * EFFECTIVE_RADIUS_KM) / 2, 1 / 3);
	return { q: scaled({ re: impedance.im, im: -impedance.re }, m), xPerKm: m / EFFECTIVE_RADIUS_KM };
}
