import { LARGEST_COORDINATE_MM, type Problem, sayNode, toDegrees } from "../foundation/index.ts";
import { checkLine, lowerEdgeOwner } from "./check-line.ts";
import { planLineOf } from "./edit-lines.ts";
import { isWithin, RANGES, type Range } from "./limits.ts";
import { nameOfItem, nameOfProfile } from "./names.ts";
import type { Fence, Item, Profile, Project, Section } from "./schema.ts";

/** What was typed wrong on the items and profiles, and which of them cannot be made of it. */
export interface ItemFaults {
  readonly problems: readonly Problem[];
  /** Items and profiles, by place in their list, whose id or number something before them has: as if not there. */
  readonly repeatedItems: ReadonlySet<number>;
  readonly repeatedProfiles: ReadonlySet<number>;
  /** Items that cannot be made; what follows their edges still can where their lines are sound. */
  readonly unfitItemIds: ReadonlySet<string>;
  /** Lines that cannot be compiled as typed. */
  readonly unfitPlanIds: ReadonlySet<string>;
  readonly unfitProfileIds: ReadonlySet<string>;
  readonly unfitLowerEdgeIds: ReadonlySet<string>;
}

/** Checks every item and profile of a document for what can be seen without compiling a curve. */
export function checkItems(project: Project): ItemFaults {
  const problems: Problem[] = [];
  const unfitItemIds = new Set<string>();
  const unfitPlanIds = new Set<string>();
  const unfitProfileIds = new Set<string>();
  const unfitLowerEdgeIds = new Set<string>();
  const note = (found: readonly Problem[], unfit: Set<string>, id: string) => {
    problems.push(...found);
    if (found.length > 0) unfit.add(id);
  };
  const repeatedItems = findRepeatedItems(project.items, problems);
  const repeatedProfiles = findRepeatedProfiles(project.profiles, problems);
  project.profiles.forEach((profile, index) => {
    if (repeatedProfiles.has(index)) return;
    const owner = { name: nameOfProfile(profile), place: { profileId: profile.id } };
    note(checkLine(profile.nodes, owner, "none"), unfitProfileIds, profile.id);
  });
  project.items.forEach((item, index) => {
    if (repeatedItems.has(index)) return;
    const owner = { name: nameOfItem(item), place: { itemId: item.id } };
    note(checkLine(planLineOf(item).elements, owner, project.symmetry), unfitPlanIds, item.id);
    note(checkNumbers(project, item), unfitItemIds, item.id);
    if (item.kind === "fence" && item.lowerEdge.kind === "heights")
      note(checkLine(item.lowerEdge.nodes, lowerEdgeOwner(item), "none"), unfitLowerEdgeIds, item.id);
  });
  return {
    problems,
    repeatedItems,
    repeatedProfiles,
    unfitItemIds,
    unfitPlanIds,
    unfitProfileIds,
    unfitLowerEdgeIds,
  };
}

function findRepeatedItems(items: readonly Item[], problems: Problem[]): ReadonlySet<number> {
  const repeated = new Set<number>();
  const ids = new Set<string>();
  const numbers = new Set<string>();
  items.forEach((item, index) => {
    const place = { itemId: item.id };
    const number = `${item.kind} ${item.number}`;
    const isRepeated = ids.has(item.id) || numbers.has(number);
    if (ids.has(item.id))
      problems.push({ kind: "duplicate-id", place, name: nameOfItem(item), field: "id", id: item.id });
    else if (numbers.has(number))
      problems.push({
        kind: "duplicate-id",
        place,
        name: nameOfItem(item),
        field: "number",
        id: String(item.number),
      });
    if (isRepeated) repeated.add(index);
    ids.add(item.id);
    numbers.add(number);
  });
  return repeated;
}

function findRepeatedProfiles(profiles: readonly Profile[], problems: Problem[]): ReadonlySet<number> {
  const repeated = new Set<number>();
  const ids = new Set<string>();
  profiles.forEach((profile, index) => {
    if (ids.has(profile.id)) {
      repeated.add(index);
      const place = { profileId: profile.id };
      problems.push({
        kind: "duplicate-id",
        place,
        name: nameOfProfile(profile),
        field: "id",
        id: profile.id,
      });
    }
    ids.add(profile.id);
  });
  return repeated;
}

function checkNumbers(project: Project, item: Item): readonly Problem[] {
  const named = { name: nameOfItem(item), place: { itemId: item.id } };
  const problems: Problem[] = [];
  const check = (field: string, value: number, range: Range) => {
    if (!isWithin(value, range))
      problems.push({ kind: "number-out-of-range", ...named, field, value, ...range });
  };
  const refer = (field: string, missingId: string, list: readonly { readonly id: string }[]) => {
    if (!list.some((entry) => entry.id === missingId))
      problems.push({ kind: "unknown-reference", ...named, field, missingId });
  };
  check("Number", Number.isInteger(item.number) ? item.number : Number.NaN, RANGES.itemNumber);
  if (item.core) {
    check("Thickness", item.core.thicknessMm, RANGES.thicknessMm);
    refer("foam", item.core.foamId, project.materials.foams);
  }
  if (item.kind === "section") checkSection(item, project, check, refer);
  else problems.push(...checkDepths(item, named));
  return problems;
}

function checkSection(
  section: Section,
  project: Project,
  check: (field: string, value: number, range: Range) => void,
  refer: (field: string, missingId: string, list: readonly { readonly id: string }[]) => void,
): void {
  check("Heading in degrees", toDegrees(section.headingRad), RANGES.turnDegrees);
  check("Tilt in degrees", toDegrees(section.tiltRad), RANGES.turnDegrees);
  if (section.pivotYMm !== undefined)
    check("Pivot line", section.pivotYMm, { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM });
  refer("profile", section.profileId, project.profiles);
}

/** Depths need a place along the fence that goes on, and a depth that a sheet can have. */
function checkDepths(
  fence: Fence,
  named: { readonly name: string; readonly place: object },
): readonly Problem[] {
  const edge = fence.lowerEdge;
  if (edge.kind !== "depths") return [];
  if (edge.nodes.length === 0) return [{ kind: "too-few-nodes", ...named, count: 0, needed: 1 }];
  const problems: Problem[] = [];
  let beforeMm = 0;
  for (const node of edge.nodes) {
    const place = { ...named.place, nodeId: node.id, line: "lower-edge" } as const;
    const check = (field: string, value: number, range: Range) => {
      if (isWithin(value, range)) return;
      problems.push({
        kind: "number-out-of-range",
        name: named.name,
        place,
        field: `${field} of ${sayNode(node.id)}`,
        value,
        ...range,
      });
    };
    check("Place along the fence", node.alongMm, { least: beforeMm, most: LARGEST_COORDINATE_MM });
    check("Depth", node.depthMm, RANGES.fenceDepthMm);
    if (node.alongMm > beforeMm) beforeMm = node.alongMm;
  }
  return problems;
}
