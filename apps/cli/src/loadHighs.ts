import highsModule, { type Highs } from "highs";

/** A solver of its own: about 40 ms. The package's types tell of its CommonJS side; Node loads the other, whose default is the loader itself. */
export function loadHighs(): Promise<Highs> {
	return (highsModule as unknown as typeof highsModule.default)();
}
