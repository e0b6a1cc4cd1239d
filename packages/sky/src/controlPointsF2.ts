import type { PointDay } from "./controlPoints.ts";
import { type F2Mirror, f2Mirror } from "./mirrorHeight.ts";
import { type F2Layer, f2Layer } from "./mufF2.ts";

/** The F2 layer over a control point as the MUF sees it. */
export function f2LayerAt(point: PointDay, hour: number): F2Layer {
	const { foF2MHz, m3000, foEMHz, gyro300MHz } = point;
	return f2Layer({ foF2MHz: foF2MHz[hour]!, m3000: m3000[hour]!, foEMHz: foEMHz[hour]!, gyroMHz: gyro300MHz });
}

/** The F2 layer over a control point as a mirror. */
export function f2MirrorAt(point: PointDay, hour: number, sunspots: number): F2Mirror {
	return f2Mirror({ foF2MHz: point.foF2MHz[hour]!, m3000: point.m3000[hour]!, foEMHz: point.foEMHz[hour]!, sunspots });
}
