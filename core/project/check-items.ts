import { assertNever, LARGEST_COORDINATE_MM, type Problem, sayNode, toDegrees } from "../foundation/index.ts";
import { checkLine, checkSpaceNodes, freeEdgeOwner, lowerEdgeOwner } from "./check-line.ts";
import { planLineOf } from "./edit-lines.ts";
import { isWithin, RANGES, type Range } from "./limits.ts";
import { nameOfItem, nameOfOpening, nameOfProfile } from "./names.ts";
import type { Fence, Item, Plate, Profile, Project, Section } from "./schema.ts";

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
  /** Openings, by place in their list, as `repeatedItems`; and those that cannot be cut. */
  readonly repeatedOpenings: ReadonlySet<number>;
  readonly unfitOpeningIds: ReadonlySet<string>;
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
    if (item.kind === "transition") {
      for (const side of ["first", "second"] as const) {
        const edge = item[side];
        if (edge.kind !== "free") continue;
        note(checkSpaceNodes(edge.nodes, freeEdgeOwner(item, side), project.symmetry), unfitPlanIds, item.id);
      }
    }
    if (item.kind === "fence" && item.lowerEdge.kind === "heights")
      note(checkLine(item.lowerEdge.nodes, lowerEdgeOwner(item), "none"), unfitLowerEdgeIds, item.id);
  });
  const repeatedOpenings = findRepeatedOpenings(project, problems);
  const unfitOpeningIds = new Set<string>();
  project.openings.forEach((opening, index) => {
    if (repeatedOpenings.has(index)) return;
    const owner = { name: nameOfOpening(opening), place: { openingId: opening.id } };
    note(checkLine(opening.outline.elements, owner, project.symmetry), unfitOpeningIds, opening.id);
    const isMissing = opening.itemId !== undefined && !project.items.some(({ id }) => id === opening.itemId);
    const missingId = opening.itemId ?? "";
    if (isMissing)
      note([{ kind: "unknown-reference", ...owner, field: "sheet", missingId }], unfitOpeningIds, opening.id);
    if (opening.cut === "square" && opening.itemId === undefined)
      note([{ kind: "opening-names-no-sheet", ...owner }], unfitOpeningIds, opening.id);
  });
  return {
    problems,
    repeatedOpenings,
    unfitOpeningIds,
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

function findRepeatedOpenings({ openings }: Project, problems: Problem[]): ReadonlySet<number> {
  const repeated = new Set<number>();
  openings.forEach((opening, index) => {
    const earlier = openings.slice(0, index);
    const field = earlier.some(({ id }) => id === opening.id)
      ? "id"
      : earlier.some(({ number }) => number === opening.number)
        ? "number"
        : undefined;
    if (!field) return;
    repeated.add(index);
    const owner = { name: nameOfOpening(opening), place: { openingId: opening.id } };
    problems.push({ kind: "duplicate-id", ...owner, field, id: String(opening[field]) });
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
  if (item.kind !== "plate" && item.core) {
    check("Thickness", item.core.thicknessMm, RANGES.thicknessMm);
    refer("foam", item.core.foamId, project.materials.foams);
  }
  if (item.kind === "section" || item.kind === "fence")
    for (const { atMm } of item.bends ?? [])
      check("Place of a bend", atMm, { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM });
  switch (item.kind) {
    case "section":
      checkSection(item, project, check, refer);
      break;
    case "fence":
      problems.push(...checkDepths(item, named));
      break;
    case "plate":
      checkPlate(item, project, check, refer);
      break;
    case "transition":
      break;
    default:
      assertNever(item);
  }
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

function checkPlate(
  plate: Plate,
  project: Project,
  check: (field: string, value: number, range: Range) => void,
  refer: (field: string, missingId: string, list: readonly { readonly id: string }[]) => void,
): void {
  check("Height", plate.zMm, { least: -LARGEST_COORDINATE_MM, most: LARGEST_COORDINATE_MM });
  check("Metal thickness", plate.thicknessMm, RANGES.metalMm);
  check("Bond line", plate.bond.lineMm, RANGES.bondLineMm);
  refer("metal", plate.metalId, project.materials.metals);
  for (const wing of plate.wings) {
    check(`Angle of wing ${wing.id} in degrees`, toDegrees(wing.angleRad), RANGES.wingDegrees);
    check(`Inside radius of wing ${wing.id}`, wing.insideRadiusMm, RANGES.wingRadiusMm);
    check(`Length of wing ${wing.id}`, wing.lengthMm, RANGES.wingMm);
    check(`Start inset of wing ${wing.id}`, wing.startInsetMm, RANGES.wingMm);
    check(`End inset of wing ${wing.id}`, wing.endInsetMm, RANGES.wingMm);
    check(`Start taper of wing ${wing.id} in degrees`, toDegrees(wing.startTaperRad), RANGES.turnDegrees);
    check(`End taper of wing ${wing.id} in degrees`, toDegrees(wing.endTaperRad), RANGES.turnDegrees);
  }
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
