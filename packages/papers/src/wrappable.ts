/** Longest word that any text column of the papers holds in one line. */
const LONGEST_WORD = 22;

/**
 * Lets a word that is longer than its column break anywhere, by zero-width spaces between its characters, so
 * that a name without spaces is never cut at the edge of a cell. Shorter words stay whole.
 */
export function wrappable(text: string, longestWord = LONGEST_WORD): string {
	return text.toWellFormed().replace(/\S+/gu, (word) => {
		const characters = word.match(/\P{M}\p{M}*|\p{M}+/gu) ?? [];
		return characters.length <= longestWord ? word : characters.join("\u200b");
	});
}
