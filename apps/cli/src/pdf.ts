import { createRequire } from "node:module";
import { dirname } from "node:path";
import { NodeCompiler } from "@myriaddreamin/typst-ts-node-compiler";
import { dayStartMs, type IsoDate } from "@skipwright/units";

/**
 * Typst source to a PDF. The same source and day give the same bytes in every process, folder and time zone,
 * on a machine with whatever fonts: the source must ask for the faces in the papers' `fonts/`, without fallback.
 * @param options.createdAt the day that the file bears as its date; never the clock
 * @throws PdfError when the source is at fault
 */
export function compilePdf(source: string, { createdAt }: { readonly createdAt: IsoDate }): Uint8Array {
	const compiler = theCompiler();
	try {
		return compiler.pdf(
			// a main file that never changes: the compiler keeps something of every main file it has seen
			{ mainFileContent: '#eval(sys.inputs.source, mode: "markup")', inputs: { source }, resetRead: true },
			{ creationTimestamp: dayStartMs(createdAt) / 1000 },
		);
	} catch (error) {
		throw new PdfError(error);
	} finally {
		compiler.evictCache(0);
	}
}

/** Typst could not make the document; the message carries its own words. */
export class PdfError extends Error {
	constructor(cause: unknown) {
		// the compiler puts its findings into `code` and leaves the message empty
		const words = cause instanceof Error ? `${cause.message} ${(cause as { code?: unknown }).code ?? ""}`.trim() : String(cause);
		super(`Cannot make the PDF: ${words}`, { cause });
		this.name = "PdfError";
	}
}

let compiler: NodeCompiler | undefined;

/** One compiler a process: it reads the fonts once. */
function theCompiler(): NodeCompiler {
	if (compiler === undefined) {
		const fonts = dirname(createRequire(import.meta.url).resolve("@skipwright/papers/fonts/SourceSans3-Regular.ttf"));
		// the only folder a document can read from is the fonts' own, not the caller's
		compiler = NodeCompiler.create({ workspace: fonts, fontArgs: [{ fontPaths: [fonts] }] });
	}
	return compiler;
}
