import { solarZenithDeg, subsolarPoint, ZENITH_DEG } from "@skipwright/sphere";
import type { Position } from "@skipwright/units";

/** Whether the sun is up at a place: any part of it above the open sea's horizon, refraction included. */
export function sunIsUp(atMs: number, where: Position): boolean {
	return solarZenithDeg(where, subsolarPoint(atMs)) < ZENITH_DEG.sunrise;
}
