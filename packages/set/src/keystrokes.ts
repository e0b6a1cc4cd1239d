import type { Hz } from "@skipwright/units";
import type { Profile } from "./profile.ts";
import { dialText } from "./tuning.ts";

/** Keys that put a dial reading in on a keypad, in order: the figure as the set shows it, then enter. */
export function keystrokes(profile: Profile, dialHz: Hz): readonly string[] {
	return [...dialText(profile, dialHz), "enter"];
}
