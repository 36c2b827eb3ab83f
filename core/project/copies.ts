import type { Command, Copies, Grip } from "./command-types.ts";
import { planLineOf, withPlanLine } from "./edit-lines.ts";
import type { Motion } from "./motion.ts";
import type { EdgeRef, Item, Opening, PlanElement, Profile, Project, TransitionEdge } from "./schema.ts";
import { transformThings } from "./transform-things.ts";
import { unfollowItem } from "./unfollow-edge.ts";

/** Things taken out of a project whole, to be set down again there or in another one. */
export interface Cutting {
  readonly projectId: string;
  readonly items: readonly Item[];
  readonly openings: readonly Opening[];
  /** Profiles that were taken themselves. */
  readonly profiles: readonly Profile[];
  /** Profiles that the taken sections stand on, for a project that does not have them. */
  readonly needed: readonly Profile[];
  /** The items as they are without what they follow: for a project that has nothing to follow. */
  readonly freed: readonly Item[];
  /** What is followed and was not taken, with its line as it was: only the same thing is followed again. */
  readonly others: readonly { readonly id: string; readonly shape: string }[];
}

/** What is taken of a project: things as a whole; nodes that are chosen one by one are no things and stay. */
export function cuttingOf(project: Project, grips: readonly Grip[]): Cutting {
  const wholes = grips.filter(({ nodeId }) => nodeId === undefined).map(({ line }) => line);
  const itemIds = new Set(wholes.flatMap((line) => (line.of === "item" ? [line.itemId] : [])));
  const openingIds = new Set(wholes.flatMap((line) => (line.of === "opening" ? [line.openingId] : [])));
  const profileIds = new Set(wholes.flatMap((line) => (line.of === "profile" ? [line.profileId] : [])));
  const items = project.items.filter(({ id }) => itemIds.has(id));
  const others = new Set(items.flatMap(itemsReferred).filter((id) => !itemIds.has(id)));
  const alone = [...others].reduce(unfollowItem, project);
  const neededIds = new Set(items.flatMap((item) => (item.kind === "section" ? [item.profileId] : [])));
  return {
    projectId: project.id,
    items,
    openings: project.openings.filter(({ id }) => openingIds.has(id)),
    profiles: project.profiles.filter(({ id }) => profileIds.has(id)),
    needed: project.profiles.filter(({ id }) => neededIds.has(id) && !profileIds.has(id)),
    freed: alone.items.filter(({ id }) => itemIds.has(id)),
    others: project.items.flatMap((item) =>
      others.has(item.id) ? [{ id: item.id, shape: shapeOf(item) }] : [],
    ),
  };
}

/**
 * Copies of a cutting for a project, brought to their place by a motion. References inside the cutting point to the
 * copies; those to other things are kept where these are there, else the copy has nodes of its own. A profile that
 * is missing is brought along; one that is there is shared. Materials that are missing give way to the tray's own.
 */
export function copiesOf(project: Project, cutting: Cutting, motion?: Motion): Copies {
  const profiles = profilesFor(project, cutting);
  const isAtHome = cutting.items.every((item) =>
    itemsReferred(item).every(
      (id) => cutting.items.some((one) => one.id === id) || isSameThere(project, cutting, id),
    ),
  );
  const source = isAtHome ? cutting.items : cutting.freed;
  const known = new Set([...source, ...(isAtHome ? project.items : [])].map(({ id }) => id));
  const kept = source.filter((item) => itemsReferred(item).every((id) => known.has(id)));
  const itemIds = freshIds(
    kept.map(({ id, kind }) => [id, LETTERS[kind]]),
    project.items.map(({ id }) => id),
  );
  const openingIds = freshIds(
    cutting.openings.map(({ id }) => [id, "o"]),
    project.openings.map(({ id }) => id),
  );
  const itemNames = [...project.items.map(({ name }) => name)];
  const items: Item[] = [];
  for (const item of kept) {
    const name = freshName(item.name, itemNames);
    itemNames.push(name);
    const number = freshNumber([...project.items, ...items].filter(({ kind }) => kind === item.kind));
    const { locked: _locked, hidden: _hidden, ...free } = item;
    const named = { ...free, id: itemIds.get(item.id) ?? item.id, name, number };
    items.push(withMaterials(project, withReferences(named, itemIds, profiles.ids)));
  }
  const openings: Opening[] = [];
  for (const opening of cutting.openings) {
    const others = [...project.openings, ...openings];
    const { locked: _locked, hidden: _hidden, ...free } = withSheet(project, opening, itemIds);
    openings.push({
      ...free,
      id: openingIds.get(opening.id) ?? opening.id,
      name: freshName(
        opening.name,
        others.map(({ name }) => name),
      ),
      number: freshNumber(others),
    });
  }
  const copies = { items, openings, profiles: profiles.added };
  return motion ? movedCopies(project, copies, motion) : copies;
}

/** The project with copies set down behind what is there; the very same where an id is taken. */
export function addCopies(project: Project, { items, openings, profiles }: Copies): Project {
  const isTaken = (list: readonly { readonly id: string }[], added: readonly { readonly id: string }[]) =>
    added.some(({ id }) => list.some((one) => one.id === id));
  if (
    isTaken(project.items, items) ||
    isTaken(project.openings, openings) ||
    isTaken(project.profiles, profiles)
  )
    return project;
  return {
    ...project,
    ...(items.length > 0 ? { items: [...project.items, ...items] } : {}),
    ...(openings.length > 0 ? { openings: [...project.openings, ...openings] } : {}),
    ...(profiles.length > 0 ? { profiles: [...project.profiles, ...profiles] } : {}),
  };
}

/** The copies as grips, for choosing them and for going on with them. */
export const gripsOfCopies = ({ items, openings, profiles }: Copies): readonly Grip[] => [
  ...items.map(({ id }): Grip => ({ line: { of: "item", itemId: id } })),
  ...openings.map(({ id }): Grip => ({ line: { of: "opening", openingId: id } })),
  ...profiles.map(({ id }): Grip => ({ line: { of: "profile", profileId: id } })),
];

/** The commands that set a row of copies beside things: `count` of them, each by the spacing farther than the last. */
export function repeatCommands(
  project: Project,
  grips: readonly Grip[],
  row: { readonly count: number; readonly spacingMm: { readonly x: number; readonly y: number } },
): readonly Extract<Command, { kind: "add-copies" }>[] {
  const cutting = cuttingOf(project, grips);
  const commands: Extract<Command, { kind: "add-copies" }>[] = [];
  let grown = project;
  for (let step = 1; step <= row.count; step++) {
    const byMm = { x: row.spacingMm.x * step, y: row.spacingMm.y * step, z: 0 };
    const copies = copiesOf(grown, cutting, { kind: "move", byMm });
    grown = addCopies(grown, copies);
    commands.push({ kind: "add-copies", copies });
  }
  return commands;
}

const LETTERS: Readonly<Record<Item["kind"], string>> = {
  section: "s",
  fence: "f",
  transition: "t",
  plate: "pl",
};

function movedCopies(project: Project, copies: Copies, motion: Motion): Copies {
  const moved = transformThings(addCopies(project, copies), gripsOfCopies(copies), motion);
  const newest = <T>(list: readonly T[], count: number) => list.slice(list.length - count);
  return {
    items: newest(moved.items, copies.items.length),
    openings: newest(moved.openings, copies.openings.length),
    profiles: newest(moved.profiles, copies.profiles.length),
  };
}

/** Profiles that come along, and what each profile of the cutting is called in the project. */
function profilesFor(
  project: Project,
  { profiles, needed }: Cutting,
): { readonly added: readonly Profile[]; readonly ids: ReadonlyMap<string, string> } {
  const isThere = (profile: Profile) =>
    project.profiles.some(
      ({ id, nodes }) => id === profile.id && JSON.stringify(nodes) === JSON.stringify(profile.nodes),
    );
  const coming = [...profiles, ...needed.filter((profile) => !isThere(profile))];
  const ids = freshIds(
    coming.map(({ id }) => [id, "p"]),
    project.profiles.map(({ id }) => id),
  );
  const names = project.profiles.map(({ name }) => name);
  const added = coming.map((profile) => {
    const name = freshName(profile.name, names);
    names.push(name);
    const { locked: _locked, hidden: _hidden, ...free } = profile;
    return { ...free, id: ids.get(profile.id) ?? profile.id, name };
  });
  return { added, ids };
}

const isSameThere = (project: Project, cutting: Cutting, id: string): boolean => {
  const shape = cutting.others.find((other) => other.id === id)?.shape;
  return (
    project.id === cutting.projectId &&
    project.items.some((item) => item.id === id && shapeOf(item) === shape)
  );
};

/** What tells an item from another one that happens to have its id: its kind and the ids along its line. */
const shapeOf = (item: Item): string =>
  [item.kind, item.number, ...planLineOf(item).elements.map(({ id }) => id)].join(" ");

function itemsReferred(item: Item): readonly string[] {
  if (item.kind === "transition")
    return [item.first, item.second].flatMap((edge) => (edge.kind === "stretch" ? [edge.edge.itemId] : []));
  return planLineOf(item).elements.flatMap((element) =>
    element.kind === "follow" ? [element.edge.itemId] : [],
  );
}

function withReferences(
  item: Item,
  itemIds: ReadonlyMap<string, string>,
  profileIds: ReadonlyMap<string, string>,
): Item {
  const led = (edge: EdgeRef): EdgeRef => ({ ...edge, itemId: itemIds.get(edge.itemId) ?? edge.itemId });
  if (item.kind === "transition") {
    const ledEdge = (edge: TransitionEdge): TransitionEdge =>
      edge.kind === "stretch" ? { ...edge, edge: led(edge.edge) } : edge;
    return { ...item, first: ledEdge(item.first), second: ledEdge(item.second) };
  }
  const line = planLineOf(item);
  const elements = line.elements.map(
    (element): PlanElement => (element.kind === "follow" ? { ...element, edge: led(element.edge) } : element),
  );
  const referred = withPlanLine(item, { ...line, elements });
  return referred.kind === "section"
    ? { ...referred, profileId: profileIds.get(referred.profileId) ?? referred.profileId }
    : referred;
}

/** A foam or a metal that the project does not have gives way to one that it has. */
function withMaterials({ materials }: Project, item: Item): Item {
  if (item.kind === "plate") {
    const isThere = materials.metals.some(({ id }) => id === item.metalId);
    return isThere ? item : { ...item, metalId: materials.metals[0]?.id ?? item.metalId };
  }
  const { core, ...rest } = item;
  return core && !materials.foams.some(({ id }) => id === core.foamId) ? rest : item;
}

/** An opening that is cut square to a sheet goes with that sheet's copy; without one it is cut upright. */
function withSheet(project: Project, opening: Opening, itemIds: ReadonlyMap<string, string>): Opening {
  const { itemId, ...rest } = opening;
  if (itemId === undefined) return opening;
  const led = itemIds.get(itemId);
  if (led !== undefined) return { ...opening, itemId: led };
  return project.items.some(({ id }) => id === itemId) ? opening : { ...rest, cut: "upright" };
}

/** For each old id a new one of its kind: the letter and one more than the highest number in use. */
function freshIds(
  wanted: readonly (readonly [id: string, letter: string])[],
  used: readonly string[],
): ReadonlyMap<string, string> {
  const ids = new Map<string, string>();
  const taken = [...used];
  for (const [id, letter] of wanted) {
    const numbers = taken.map((other) =>
      other.startsWith(letter) ? Number(other.slice(letter.length)) : Number.NaN,
    );
    const fresh = `${letter}${Math.max(0, ...numbers.filter(Number.isInteger)) + 1}`;
    ids.set(id, fresh);
    taken.push(fresh);
  }
  return ids;
}

const freshNumber = (others: readonly { readonly number: number }[]): number =>
  Math.max(0, ...others.map(({ number }) => number)) + 1;

const MOST_LETTERS = 60;

/** `Side fence`, `Side fence 2`, `Side fence 3`; what has no name keeps none. */
function freshName(name: string, used: readonly string[]): string {
  if (name.trim() === "") return name;
  if (!used.includes(name)) return name;
  const stem = name.replace(/ \d+$/, "");
  for (let count = 2; ; count++) {
    const tail = ` ${count}`;
    const fresh = `${stem.slice(0, MOST_LETTERS - tail.length)}${tail}`;
    if (!used.includes(fresh)) return fresh;
  }
}
