import { UsageError } from "./context.ts";

/** What an option was given, read by `read`; its complaint comes with the option's name. @throws UsageError */
export function given<T>(flag: string, text: string, read: (text: string) => T): T {
	try {
		return read(text);
	} catch (error) {
		throw new UsageError(`cannot take ${flag} ${text}: ${(error as Error).message}`);
	}
}
