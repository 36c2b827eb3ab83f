import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Fonts } from "../core/book/index.ts";

/** The open fonts of the pages, from their packages. */
export function readFonts(): Fonts {
  const find = createRequire(import.meta.url);
  const read = (path: string) => new Uint8Array(readFileSync(find.resolve(`@expo-google-fonts/${path}`)));
  return {
    sans: read("ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf"),
    bold: read("ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf"),
    mono: read("jetbrains-mono/400Regular/JetBrainsMono_400Regular.ttf"),
  };
}
