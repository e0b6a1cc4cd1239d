/** For tests: insertions, deletions and changes that make one sequence from the other (Levenshtein's distance). */
export function editErrors<T>(sent: ArrayLike<T>, read: ArrayLike<T>): number {
	let row = Int32Array.from({ length: read.length + 1 }, (_, j) => j);
	let next = new Int32Array(read.length + 1);
	for (let i = 1; i <= sent.length; i++) {
		next[0] = i;
		for (let j = 1; j <= read.length; j++) {
			const changed = row[j - 1]! + (sent[i - 1] === read[j - 1] ? 0 : 1);
			next[j] = Math.min(row[j]! + 1, next[j - 1]! + 1, changed);
		}
		[row, next] = [next, row];
	}
	return row[read.length]!;
}
