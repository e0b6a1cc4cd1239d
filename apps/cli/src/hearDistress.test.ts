import { expect, test } from "vitest";
import { fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

async function heard(...call: readonly string[]): Promise<string> {
	const making = fakeContext({});
	expect(await runProgram(making, ["make", "dsc", "call.wav", "--from", "299123456", ...call])).toBe(0);
	const hearing = fakeContext({ "call.wav": making.written.get("call.wav") as Uint8Array });
	expect(await runProgram(hearing, ["hear", "call.wav"])).toBe(0);
	return hearing.printed().replaceAll(/\s+/g, " ");
}

// 47 CFR 80.1121, 80.1123(d)
test("a distress alert is followed by what to do, a test call is not", async () => {
	const alert = await heard("--call", "distress", "--training", "--nature", "sinking", "--at=-33.9,18.4", "--time", "12:34");
	expect(alert).toContain("Distress alert from ship 299123456");
	for (const said of [
		"Listen for five minutes on the telephony distress frequency of the same band",
		"2182 for 2187.5, 4125 for 4207.5, 6215 for 6312, 8291 for 8414.5, 12290 for 12577, 16420 for 16804.5",
		"Leave the acknowledgement by DSC to coast stations",
		"no coast station acknowledges within five minutes, pass the alert on to a coast station",
		"Official procedures prevail",
	]) {
		expect(alert).toContain(said);
	}
	const other = await heard("--call", "test", "--to", "002999999");
	expect(other).toContain("test call");
	expect(other).not.toContain("procedures");
});
