import type { HeardChart } from "../chart/chartReceiver.ts";
import type { HeardDsc } from "../dsc/heardDsc.ts";
import type { HeardTeletype } from "../teletype/heardTeletype.ts";
import type { HeardText } from "../text/heardText.ts";
import type { HeardTone } from "../tone/heardTone.ts";
import type { HeardVoice } from "../voice/heardVoice.ts";

/** Anything that a receiver of this package can hear. */
export type Heard = HeardDsc | HeardText | HeardTeletype | HeardChart | HeardTone | HeardVoice;
export type HeardKind = Heard["kind"];

/** All kinds, the surest to be what they seem first: of two that claim the same sound, the one that stands first has it. */
export const HEARD_KINDS: readonly HeardKind[] = ["dsc", "text", "chart", "teletype", "tone", "voice"];
