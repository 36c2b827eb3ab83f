import { type Item, type Profile, type Project, resolveLines } from "../../core/project/index.ts";
import {
  elementsOfLine,
  type Scene,
  type SceneLine,
  sceneLinesOf,
  sceneOf,
  sceneOfLines,
  sceneOfProfile,
} from "../tools/index.ts";

/**
 * The scene of a document, in which the lines of items and profiles that have not changed since they were last
 * asked for are the very same objects: an edit of one line compiles that line, and draws that line, alone.
 */
export function sceneByItem(project: Project): Scene {
  if (hasRepeats(project)) return sceneOf(project, resolveLines(project));
  return sceneOfLines(
    project,
    project.items.flatMap((item) => linesOfItem(project, item)),
    project.profiles.map((profile) => lineOfProfile(project, profile)),
  );
}

interface KnownLines {
  /** Everything that the lines were made of. */
  readonly from: readonly unknown[];
  readonly lines: readonly SceneLine[];
}

const knownItems = new WeakMap<Item, KnownLines>();
const knownProfiles = new WeakMap<Profile, SceneLine>();

function linesOfItem(project: Project, item: Item): readonly SceneLine[] {
  const items = withFollowed(project, item);
  const used = new Set(items.map((other) => (other.kind === "section" ? other.profileId : "")));
  const profiles = project.profiles.filter((profile) => used.has(profile.id));
  // Of a profile it counts only that it is there.
  const ids = profiles.map((profile) => profile.id).join("/");
  const from = [...items, project.symmetry, project.materials.foams, ids];
  const known = knownItems.get(item);
  if (known && isSameList(known.from, from)) return known.lines;
  const lines = sceneLinesOf(item, resolveLines({ ...project, items, profiles }));
  knownItems.set(item, { from, lines });
  return lines;
}

function lineOfProfile(project: Project, profile: Profile): SceneLine {
  const known = knownProfiles.get(profile);
  if (known) return known;
  const line = sceneOfProfile(profile, resolveLines({ ...project, items: [], profiles: [profile] }));
  knownProfiles.set(profile, line);
  return line;
}

/** An item with all whose edges it follows, and whose edges those follow, in the order of the document. */
function withFollowed(project: Project, item: Item): readonly Item[] {
  const ids = new Set([item.id]);
  for (const id of ids) {
    for (const element of elementsOfLine(project, { of: "item", itemId: id }))
      if (element.kind === "follow") ids.add(element.edge.itemId);
  }
  return project.items.filter((candidate) => ids.has(candidate.id));
}

const isSameList = (one: readonly unknown[], other: readonly unknown[]): boolean =>
  one.length === other.length && one.every((entry, index) => entry === other[index]);

/** An id or a number that comes twice is a fault of the whole document; one item alone does not show it. */
function hasRepeats({ items, profiles }: Project): boolean {
  const names = [
    ...items.map((item) => `item ${item.id}`),
    ...items.map((item) => `${item.kind} number ${item.number}`),
    ...profiles.map((profile) => `profile ${profile.id}`),
  ];
  return new Set(names).size < names.length;
}
