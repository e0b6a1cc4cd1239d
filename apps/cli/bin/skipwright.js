#!/usr/bin/env node
import { launch } from "./runtime.mjs";

await launch(new URL("../src/main.ts", import.meta.url));
