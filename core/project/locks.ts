import { nameOfItem, nameOfOpening, nameOfProfile, nameOfUnderlay } from "./names.ts";
import type { Profile, Project, Section, ThingRef, Underlay } from "./schema.ts";

/** A locked thing that stands against a change, and the sentence that says so. */
export interface Lock {
  /** What has the lock: a profile that is locked through its section names the section. */
  readonly thing: ThingRef;
  readonly words: string;
}

/**
 * The locks that an edit would break: locked things that it changes or takes away. A profile is locked with any
 * section that is bent by it. What a locked thing follows is not: an edge that is shared moves with its owner. A
 * locked picture keeps its place and its scale, and may be faded and named.
 */
export function locksAgainst(before: Project, after: Project): readonly Lock[] {
  if (before === after) return [];
  return [
    ...changedIn(before.items, after.items).flatMap((item) =>
      item.locked ? [lockOf({ of: "item", itemId: item.id }, nameOfItem(item))] : [],
    ),
    ...changedIn(before.openings, after.openings).flatMap((opening) =>
      opening.locked ? [lockOf({ of: "opening", openingId: opening.id }, nameOfOpening(opening))] : [],
    ),
    ...changedIn(before.profiles, after.profiles).flatMap((profile) => lockOfProfile(before, profile)),
    ...changedIn(before.underlays, after.underlays).flatMap((underlay) =>
      underlay.locked && !isSamePlace(underlay, after.underlays)
        ? [lockOf({ of: "underlay", underlayId: underlay.id }, nameOfUnderlay(underlay))]
        : [],
    ),
  ];
}

/** The section whose lock keeps a profile as it is, where there is one. */
export const lockedSectionOf = (project: Project, profileId: string): Section | undefined =>
  project.items.find(
    (item): item is Section =>
      item.kind === "section" && item.locked === true && item.profileId === profileId,
  );

function lockOfProfile(project: Project, profile: Profile): readonly Lock[] {
  const name = nameOfProfile(profile);
  if (profile.locked) return [lockOf({ of: "profile", profileId: profile.id }, name)];
  const section = lockedSectionOf(project, profile.id);
  if (!section) return [];
  const words = `${nameOfItem(section)} is locked, and is bent by ${name}. Unlock it to change the profile.`;
  return [{ thing: { of: "item", itemId: section.id }, words }];
}

const lockOf = (thing: ThingRef, name: string): Lock => ({
  thing,
  words: `${name} is locked. Unlock it to change it.`,
});

/** What was there before and is another now, or gone. */
function changedIn<Thing extends { readonly id: string }>(
  before: readonly Thing[],
  after: readonly Thing[],
): readonly Thing[] {
  if (before === after) return [];
  const kept = new Set(after);
  return before.filter((thing) => !kept.has(thing));
}

function isSamePlace(underlay: Underlay, after: readonly Underlay[]): boolean {
  const now = after.find(({ id }) => id === underlay.id);
  return (
    now !== undefined &&
    now.view === underlay.view &&
    now.picture === underlay.picture &&
    now.mmPerPx === underlay.mmPerPx &&
    now.turnRad === underlay.turnRad &&
    now.origin.x === underlay.origin.x &&
    now.origin.up === underlay.origin.up
  );
}
