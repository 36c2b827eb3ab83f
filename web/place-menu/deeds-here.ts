import type { Deed } from "../deeds/index.ts";

/** Groups of deeds that ask for nothing chosen. */
const ON_BARE_PAPER: ReadonlySet<string> = new Set(["tool", "view"]);
/** Groups that are about the whole work, and are reached from the title. */
const OF_THE_WORK: ReadonlySet<string> = new Set(["tray", "stage"]);
/** What a finger does better by itself. */
const BY_HAND = /^(push-|turn-|numbers$|menu-here$|leave$)/;

/**
 * The deeds that a menu offers at a place of the drawing, of those that are possible now: what can be done with
 * what is chosen or being drawn; on bare paper the tools, and how the drawing is seen.
 */
export function deedsHere(possible: readonly Deed[], isOnSomething: boolean): readonly Deed[] {
  const heard = possible.filter((deed) => deed.heard !== "everywhere" || !OF_THE_WORK.has(deed.group));
  return heard.filter(
    ({ name, group }) =>
      !OF_THE_WORK.has(group) && !BY_HAND.test(name) && ON_BARE_PAPER.has(group) !== isOnSomething,
  );
}
