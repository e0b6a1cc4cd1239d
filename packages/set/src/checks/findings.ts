import type { Finding, FindingCode, Row, Severity } from "../types.ts";

/** The clause or practice that each finding rests on. */
const SOURCES: Readonly<Record<FindingCode, string>> = {
	"assigned-as-carrier": "RR Appendix 17 Part B Section I (assigned = carrier + 1.4 kHz); IMO A.806(19) Part C 1.2 (sets show the carrier)",
	"pair-swapped": "RR Appendix 17 Part B Section I-A",
	"pair-broken": "RR Appendix 17 Part B Section I-A",
	"offset-missing": "charts: 1.9 kHz, WMO practice; DSC, NBDP and NAVTEX: 1.7 kHz, ITU-R M.493 and M.625",
	"offset-twice": "charts: 1.9 kHz, WMO practice; DSC, NBDP and NAVTEX: 1.7 kHz, ITU-R M.493 and M.625",
	"near-miss": "common practice, no source: a figure one keying slip away from a published one",
	"off-raster": "RR Appendix 17 Part B Section I (3 kHz raster)",
	"no-listing": "the directory in hand",
	"wrong-mode": "RR Appendix 1 (classes of emission); the listing",
	"wrong-sideband": "47 CFR 80.213(a)(3) and RR Appendix 17 (upper sideband); the listing",
	"distress-used-as-working": "RR Appendix 15; RR 52.221A for 12290 and 16420 (from memory)",
	"amateur-without-licence": "RR Article 5 and 25.1; 47 CFR 97.301",
	"amateur-other-region": "RR Article 5; 47 CFR 97.301",
	"transmit-on-broadcast": "RR Article 5; the listing (receive only)",
	"transmit-outside-service": "RR Article 5 and 4.4",
	"listing-closed": "the listing's source",
	"listing-stale": "common practice, no source: age limits by kind of source",
	"cannot-tune": "the set's profile",
	"tag-too-long": "the set's profile",
	"tag-duplicate": "common practice, no source",
	"duplicate-entry": "common practice, no source",
	"place-duplicate": "a place holds one entry",
	"place-out-of-range": "the set's profile",
	"block-mixed": "common practice, no source: a scanned block holds what can be listened to together",
	"guard-missing": "RR Appendix 15",
};

/** A finding about one row. */
export function rowFinding(row: Row, code: FindingCode, severity: Severity, message: string, remedy: string): Finding {
	return { code, severity, bank: row.bank, place: row.place, line: row.line, message, source: SOURCES[code], remedy };
}

/** A finding about the list as a whole. */
export function listFinding(code: FindingCode, severity: Severity, message: string, remedy: string): Finding {
	return { code, severity, bank: null, place: null, line: null, message, source: SOURCES[code], remedy };
}
