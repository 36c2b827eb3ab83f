import type { Deed } from "./deed.ts";

/**
 * The deeds in whose words every typed word is found, in any order and however it is written; those whose own
 * word begins with what was typed come first, else the order stays. Nothing typed finds all.
 */
export function findDeeds(deeds: readonly Deed[], typed: string): readonly Deed[] {
  const wanted = plain(typed)
    .split(/\s+/)
    .filter((word) => word !== "");
  const found = deeds.filter((deed) => {
    const words = plain(`${deed.word} ${deed.explains}`);
    return wanted.every((word) => words.includes(word));
  });
  const first = wanted.join(" ");
  const begins = (deed: Deed) => first !== "" && plain(deed.word).startsWith(first);
  return [...found.filter(begins), ...found.filter((deed) => !begins(deed))];
}

/** Without capitals and accents. */
const plain = (text: string): string => text.normalize("NFD").replaceAll(/\p{M}/gu, "").toLowerCase();
