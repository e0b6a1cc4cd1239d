import type { Directory, Listing } from "@skipwright/directory";
import { describe, expect, it } from "vitest";
import { answered } from "./answered.ts";

const listing = (id: string, stationId: string, service: string, status = "active") =>
	({ id, stationId, service, status, origin: "shipped" }) as unknown as Listing;

describe("answered", () => {
	const voice = listing("v", "a", "voice-working");
	const alone = listing("w", "b", "voice-working");
	const chart = listing("c", "a", "fax");
	const unknown = listing("u", "c", "voice-working");
	const shares: Readonly<Record<string, readonly number[] | null>> = {
		v: [1, 1, 0.25],
		w: [1, 0, 1],
		c: [1, 1, 1],
		u: [1, 1, 1],
		d4: [0, 0.25, 1],
		d8: [0.25, 0, 0],
		gone: [1, 1, 1],
		dark: null,
	};
	const listings = [
		...[voice, alone, chart, unknown],
		listing("d4", "a", "dsc-watch"),
		listing("d8", "a", "dsc-watch"),
		listing("gone", "a", "dsc-watch", "closed"),
		listing("dark", "c", "dsc-watch"),
	];
	const read = answered({ listings } as unknown as Directory, ({ id }) => {
		const own = shares[id];
		return own === null || own === undefined ? null : Float64Array.from(own);
	});

	it("counts a station that keeps a watch only where one of its watches hears the call", () => {
		expect([...(read(voice) ?? [])]).toEqual([0.25, 0.25, 0.25]);
	});

	it("leaves voice alone where no watch is known or nothing tells, and everything else", () => {
		expect([alone, unknown, chart].map((one) => [...(read(one) ?? [])])).toEqual([
			[1, 0, 1],
			[1, 1, 1],
			[1, 1, 1],
		]);
	});
});
