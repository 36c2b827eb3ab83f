import type { LineRef, Project, ThingRef } from "./schema.ts";

/** How a thing stands on the board. */
export interface StandingOf {
  readonly locked: boolean;
  readonly hidden: boolean;
}

/** Whether a thing is locked or hidden; what is not there is neither. */
export function standingOf(project: Project, thing: ThingRef): StandingOf {
  const found = findThing(project, thing);
  return { locked: found?.locked === true, hidden: found?.hidden === true };
}

/** Everything that can be locked and hidden, in the order of the document. */
export const allThings = ({ items, openings, profiles, underlays }: Project): readonly ThingRef[] => [
  ...items.map(({ id }): ThingRef => ({ of: "item", itemId: id })),
  ...openings.map(({ id }): ThingRef => ({ of: "opening", openingId: id })),
  ...profiles.map(({ id }): ThingRef => ({ of: "profile", profileId: id })),
  ...underlays.map(({ id }): ThingRef => ({ of: "underlay", underlayId: id })),
];

/** What is hidden, in the order of the document. */
export const hiddenThings = (project: Project): readonly ThingRef[] =>
  allThings(project).filter((thing) => standingOf(project, thing).hidden);

/**
 * Whether the board draws a profile: not where it is hidden itself, and not where every section that is bent by
 * it is hidden.
 */
export function isProfileShown(project: Project, profileId: string): boolean {
  if (standingOf(project, { of: "profile", profileId }).hidden) return false;
  const users = project.items.filter((item) => item.kind === "section" && item.profileId === profileId);
  return users.length === 0 || users.some(({ hidden }) => !hidden);
}

/** What a drawn line belongs to. */
export function thingOfLine(line: LineRef): ThingRef {
  switch (line.of) {
    case "profile":
      return { of: "profile", profileId: line.profileId };
    case "opening":
      return { of: "opening", openingId: line.openingId };
    case "item":
    case "lower-edge":
    case "edge":
      return { of: "item", itemId: line.itemId };
  }
}

function findThing(project: Project, thing: ThingRef) {
  switch (thing.of) {
    case "item":
      return project.items.find(({ id }) => id === thing.itemId);
    case "opening":
      return project.openings.find(({ id }) => id === thing.openingId);
    case "profile":
      return project.profiles.find(({ id }) => id === thing.profileId);
    case "underlay":
      return project.underlays.find(({ id }) => id === thing.underlayId);
  }
}
