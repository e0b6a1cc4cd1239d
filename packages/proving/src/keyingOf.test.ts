import { directory } from "@skipwright/directory";
import { expect, it } from "vitest";
import { keyingOf } from "./keyingOf.ts";

it("reads baud and shift of the teletype stations from their remarks, every figure that a source gives", () => {
	const found = directory()
		.listings.filter(({ service }) => service === "rtty-weather")
		.map((listing) => [listing.id, keyingOf(listing, "teletype")!.bauds, keyingOf(listing, "teletype")!.shiftsHz]);
	expect(found).toEqual([
		["za-capenaval/rtty-weather/7508", [75], [170]],
		["za-capenaval/rtty-weather/13538", [75], [170]],
		["de-pinneberg/rtty-weather/147.3", [50], [85]],
		["de-pinneberg/rtty-weather/4583", [50], [450]],
		["de-pinneberg/rtty-weather/7646", [50], [450]],
		["de-pinneberg/rtty-weather/10100.8", [50], [450, 850]],
		["de-pinneberg/rtty-weather/11039", [50], [85, 450]],
		["de-pinneberg/rtty-weather/14467.3", [50], [85, 450]],
	]);
	expect(keyingOf({ notes: "" }, "teletype")).toEqual({ bauds: [45.45, 50, 75], shiftsHz: [450], sense: "any" });
	expect(keyingOf({ notes: "" }, "dsc")).toEqual({ bauds: [100], shiftsHz: [170], sense: "high is B" });
	expect(keyingOf({ notes: "" }, "chart")).toBeNull();
});
