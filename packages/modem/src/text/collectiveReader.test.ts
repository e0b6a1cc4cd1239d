import { expect, it } from "vitest";
import { type CharacterErrors, characterErrors } from "../../truth/characterErrors.ts";
import { textbookSofts } from "../../truth/textbookBits.ts";
import { codesOfText } from "./codesOfText.ts";
import { collectiveBits } from "./collective.ts";

const TEXT = "THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG ".repeat(50);
const CODES = codesOfText(TEXT);

const total = ({ lost, wrong }: CharacterErrors) => lost + wrong;

it("gains 3 dB and more over one copy by weighing both together, on bits of the textbook", () => {
	const at = (ebN0Db: number) => characterErrors(textbookSofts([...collectiveBits(TEXT)], ebN0Db, 2), CODES, 16);
	expect(CODES.length).toBe(2_201);

	// the oracle of the comparison: a signal of seven bits, each wrong with the textbook's 0.5 exp(-Eb/2N0)
	const seven = (db: number) => 1 - (1 - 0.5 * Math.exp(-(10 ** (db / 10)) / 2)) ** 7;
	for (const db of [7, 10]) expect(Math.abs(total(at(db).firstCopy) - seven(db))).toBeLessThan(3 * Math.sqrt(seven(db) / CODES.length));

	const { firstCopy, eitherCopy, together } = at(7.2);
	expect(total(together)).toBeLessThan(0.01); // one copy needs 10.4 dB for it
	expect(together.wrong).toBeLessThan(0.004);
	expect(total(eitherCopy)).toBeGreaterThan(5 * total(together));
	expect(total(firstCopy)).toBeGreaterThan(20 * total(together));
});
