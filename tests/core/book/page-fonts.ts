import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Fonts } from "../../../core/book/index.ts";

const require = createRequire(import.meta.url);
const read = (path: string): Uint8Array => new Uint8Array(readFileSync(require.resolve(path)));

/** The faces of the pages, as the packages bring them. */
export const pageFonts: Fonts = {
  sans: read("@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf"),
  bold: read("@expo-google-fonts/ibm-plex-sans/700Bold/IBMPlexSans_700Bold.ttf"),
  mono: read("@expo-google-fonts/jetbrains-mono/400Regular/JetBrainsMono_400Regular.ttf"),
};
