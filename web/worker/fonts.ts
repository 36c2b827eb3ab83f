import sansUrl from "@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf?url";
import boldUrl from "@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf?url";
import monoUrl from "@expo-google-fonts/jetbrains-mono/400Regular/JetBrainsMono_400Regular.ttf?url";
import type { Fonts } from "../../core/book/index.ts";

let fetched: Promise<Fonts> | undefined;

/** The faces of the printed pages, fetched once. */
export function pageFonts(): Promise<Fonts> {
  fetched ??= fetchFonts().catch((error: unknown) => {
    fetched = undefined;
    throw error;
  });
  return fetched;
}

async function fetchFonts(): Promise<Fonts> {
  const [sans, bold, mono] = await Promise.all([sansUrl, boldUrl, monoUrl].map(bytesOf));
  if (!sans || !bold || !mono) throw new Error("A face is missing.");
  return { sans, bold, mono };
}

async function bytesOf(url: string): Promise<Uint8Array> {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`The letters for the pages could not be fetched (${answer.status}).`);
  return new Uint8Array(await answer.arrayBuffer());
}
