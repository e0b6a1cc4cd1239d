import { figure, svgElement } from "./reachSvg.ts";
import type { ReachTheme } from "./reachTheme.ts";

/** Distance of the slanted lines along either axis, px. */
const HATCH_STEP = 5;

export interface HatchBox {
	readonly x1: number;
	readonly x2: number;
	readonly y1: number;
	readonly y2: number;
	/** Lines drawn where night begins and ends, across the box: at these x, or y. */
	readonly edgesX?: readonly number[];
	readonly edgesY?: readonly number[];
}

/** Slanted lines over boxes. They keep to one raster over the picture, so that boxes side by side are hatched as one. */
export function reachHatch(boxes: readonly HatchBox[], theme: ReachTheme): string {
	const d = boxes.map((box) => slants(box) + edges(box)).join("");
	return d === "" ? "" : svgElement("path", { class: "reach-night", stroke: theme.hatch, "stroke-width": 0.7, fill: "none", d });
}

/** The lines x + y = n steps, clipped to the box. */
function slants({ x1, x2, y1, y2 }: HatchBox): string {
	let d = "";
	for (let n = Math.floor((x1 + y1) / HATCH_STEP) + 1; n * HATCH_STEP < x2 + y2; n++) {
		const sum = n * HATCH_STEP;
		const [left, right] = [Math.max(x1, sum - y2), Math.min(x2, sum - y1)];
		d += `M${figure(left)} ${figure(sum - left)}L${figure(right)} ${figure(sum - right)}`;
	}
	return d;
}

function edges({ x1, x2, y1, y2, edgesX = [], edgesY = [] }: HatchBox): string {
	const upright = edgesX.map((x) => `M${figure(x)} ${figure(y1)}V${figure(y2)}`);
	const level = edgesY.map((y) => `M${figure(x1)} ${figure(y)}H${figure(x2)}`);
	return [...upright, ...level].join("");
}
