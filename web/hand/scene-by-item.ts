import {
  type Item,
  type Opening,
  type PlanElement,
  type Profile,
  type Project,
  planLineOf,
  resolveLines,
} from "../../core/project/index.ts";
import {
  type Scene,
  type SceneLine,
  sceneLinesOf,
  sceneOf,
  sceneOfLines,
  sceneOfOpening,
  sceneOfProfile,
} from "../tools/index.ts";

/**
 * The scene of a document, in which the lines of items and profiles that have not changed since they were last
 * asked for are the very same objects: an edit of one line compiles that line, and draws that line, alone.
 */
export function sceneByItem(project: Project): Scene {
  if (hasRepeats(project)) return sceneOf(project, resolveLines(project));
  return sceneOfLines(project, {
    items: linesOfItems(project),
    openings: project.openings.flatMap((opening) => lineOfOpening(project, opening)),
    profiles: project.profiles.map((profile) => lineOfProfile(project, profile)),
  });
}

interface KnownLines {
  /** Everything that the lines were made of. */
  readonly from: readonly unknown[];
  readonly lines: readonly SceneLine[];
}

const knownItems = new WeakMap<Item, KnownLines>();
const knownOpenings = new WeakMap<Opening, KnownLines>();
const knownProfiles = new WeakMap<Profile, SceneLine>();

/** The lines of all items; those that are not known are compiled together, with what they follow, once. */
function linesOfItems(project: Project): readonly SceneLine[] {
  const grounds = new Map(project.items.map((item) => [item, groundOfItem(project, item)]));
  const isKnown = (item: Item) => isSameList(knownItems.get(item)?.from ?? [], grounds.get(item) ?? []);
  const unknown = project.items.filter((item) => !isKnown(item));
  if (unknown.length > 0) {
    const items = withFollowed(
      project,
      unknown.map(({ id }) => id),
    );
    const profiles = profilesOf(project, items);
    const resolved = resolveLines({ ...project, items, profiles, openings: [] });
    for (const item of unknown)
      knownItems.set(item, { from: grounds.get(item) ?? [], lines: sceneLinesOf(item, resolved) });
  }
  return project.items.flatMap((item) => knownItems.get(item)?.lines ?? []);
}

/** Everything that the lines of an item are made of. */
function groundOfItem(project: Project, item: Item): readonly unknown[] {
  const items = withFollowed(project, [item.id]);
  // Of a profile it counts only that it is there.
  const ids = profilesOf(project, items)
    .map((profile) => profile.id)
    .join("/");
  return [...items, project.symmetry, project.materials.foams, project.materials.metals, ids];
}

function profilesOf(project: Project, items: readonly Item[]): readonly Profile[] {
  const used = new Set(items.map((item) => (item.kind === "section" ? item.profileId : "")));
  return project.profiles.filter((profile) => used.has(profile.id));
}

function lineOfOpening(project: Project, opening: Opening): readonly SceneLine[] {
  const items = withFollowed(project, followedBy(opening.outline.elements));
  const from = [...items, project.symmetry];
  const known = knownOpenings.get(opening);
  if (known && isSameList(known.from, from)) return known.lines;
  // Which sheet it is square to does not change where it is drawn.
  const { itemId: _, ...anywhere } = opening;
  const upright = { ...anywhere, cut: "upright" } as const;
  const lines = [
    sceneOfOpening(opening, resolveLines({ ...project, items, profiles: [], openings: [upright] })),
  ];
  knownOpenings.set(opening, { from, lines });
  return lines;
}

function lineOfProfile(project: Project, profile: Profile): SceneLine {
  const known = knownProfiles.get(profile);
  if (known) return known;
  const line = sceneOfProfile(
    profile,
    resolveLines({ ...project, items: [], openings: [], profiles: [profile] }),
  );
  knownProfiles.set(profile, line);
  return line;
}

/** Items with all whose edges they follow, and whose edges those follow, in the order of the document. */
function withFollowed(project: Project, itemIds: readonly string[]): readonly Item[] {
  const ids = new Set(itemIds);
  for (const id of ids) {
    const item = project.items.find((candidate) => candidate.id === id);
    for (const followed of item ? edgesUsedBy(item) : []) ids.add(followed);
  }
  return project.items.filter((candidate) => ids.has(candidate.id));
}

function edgesUsedBy(item: Item): readonly string[] {
  if (item.kind !== "transition") return followedBy(planLineOf(item).elements);
  return [item.first, item.second].flatMap((edge) => (edge.kind === "stretch" ? [edge.edge.itemId] : []));
}

const followedBy = (elements: readonly PlanElement[]): readonly string[] =>
  elements.flatMap((element) => (element.kind === "follow" ? [element.edge.itemId] : []));

const isSameList = (one: readonly unknown[], other: readonly unknown[]): boolean =>
  one.length === other.length && one.every((entry, index) => entry === other[index]);

/** An id or a number that comes twice is a fault of the whole document; one item alone does not show it. */
function hasRepeats({ items, openings, profiles }: Project): boolean {
  const names = [
    ...items.map((item) => `item ${item.id}`),
    ...items.map((item) => `${item.kind} number ${item.number}`),
    ...openings.map((opening) => `opening ${opening.id}`),
    ...openings.map((opening) => `opening number ${opening.number}`),
    ...profiles.map((profile) => `profile ${profile.id}`),
  ];
  return new Set(names).size < names.length;
}
