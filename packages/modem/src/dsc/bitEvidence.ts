import { exp, log } from "@skipwright/units";

/** Natural logarithms of how much likelier a bit is under "the higher tone" (`high`) or "the lower" (`low`) than under "either, as a coin falls". */
export interface Evidence {
	readonly high: Float64Array;
	readonly low: Float64Array;
}

/** No bit speaks louder than odds of 200 to 1: clicks and wrongly guessed levels must not outvote the rest of a symbol. */
const MOST = log(200);
const LN_2 = log(2);

/** Evidence of one bit from its log-likelihood ratio, positive for the higher tone. A ratio that is no number says nothing. */
export function bitEvidence(soft: number): { readonly high: number; readonly low: number } {
	const limited = soft > MOST ? MOST : soft < -MOST ? -MOST : Number.isNaN(soft) ? 0 : soft;
	const spread = log(1 + exp(-Math.abs(limited)));
	const likelier = LN_2 - spread;
	const other = likelier - Math.abs(limited);
	return limited > 0 ? { high: likelier, low: other } : { high: other, low: likelier };
}
