import { boundsOfLoops, type Seam, type Strip } from "../cutting/index.ts";
import type { PlanPoint, SpacePoint } from "../foundation/index.ts";
import type { Jig, Rib } from "../jig/index.ts";
import type { Part } from "../patterns/index.ts";
import { foamOf, type Project } from "../project/index.ts";
import { bendLine, fibreOf, partIdOf, placeOfXi, type Sheet, uAtPlace, xiOfPlan } from "../surfaces/index.ts";

/** What is carried to the jig in one go: a whole part, or strips of one that is too large to carry. */
export interface GlueUnit {
  /** The part's id when it is the whole part, else the first strip's. */
  readonly id: string;
  /** Ids that a step adds: the part's, or those of its strips. */
  readonly adds: readonly string[];
  readonly part: Part;
  readonly strips: readonly Strip[];
  /** Seams inside the unit: glued flat on the bench. */
  readonly benchSeams: readonly Seam[];
  readonly lengthMm: number;
  readonly widthMm: number;
  /** Ids of the ribs that it rests on. */
  readonly ribIds: readonly string[];
  /** Its middle in plan. */
  readonly middle: PlanPoint;
}

export interface UnitSources {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  readonly strips: readonly Strip[];
  readonly seams: readonly Seam[];
  readonly jig: Jig;
  /** No longer sheet is carried as one. */
  readonly mostCarriedMm: number;
}

/**
 * The tray as pieces that come to the jig: strips that seams hold together are one unit as long as it can be
 * carried, else every strip is its own. In the order of parts and strips.
 */
export function glueUnits(sources: UnitSources): GlueUnit[] {
  return sources.parts.flatMap((part) => {
    const strips = sources.strips.filter(({ partId }) => partId === part.id);
    const seams = sources.seams.filter((seam) => seam.partId === part.id && liesFlat(seam, part));
    return connected(strips, seams).flatMap((group): GlueUnit[] => {
      const whole = unitOf(part, group, strips.length, sources);
      const isCarried = group.length === 1 || whole.lengthMm <= sources.mostCarriedMm;
      return isCarried ? [whole] : group.map((strip) => unitOf(part, [strip], strips.length, sources));
    });
  });
}

/** Whether both sides of a seam lie in one plane on the bench: not where twist divides a sheet, nor between planks. */
export const liesFlat = ({ runs, bevelRad }: Seam, { kind }: Part): boolean =>
  bevelRad === undefined && (kind !== "transition" || runs === "along ruling");

/** Strips grouped by the seams between them. */
function connected(strips: readonly Strip[], seams: readonly Seam[]): Strip[][] {
  const groups: Strip[][] = [];
  const seen = new Set<string>();
  for (const first of strips) {
    if (seen.has(first.id)) continue;
    const ids = new Set([first.id]);
    for (let size = 0; size < ids.size; ) {
      size = ids.size;
      for (const { stripIds } of seams) {
        if (stripIds.some((id) => ids.has(id))) for (const id of stripIds) ids.add(id);
      }
    }
    for (const id of ids) seen.add(id);
    groups.push(strips.filter(({ id }) => ids.has(id)));
  }
  return groups;
}

function unitOf(
  part: Part,
  strips: readonly Strip[],
  stripsOfPart: number,
  { sheets, seams, jig }: UnitSources,
): GlueUnit {
  const ids = strips.map(({ id }) => id);
  const isWhole = ids.length === stripsOfPart;
  const bounds = boundsOfLoops(strips.flatMap(({ loops }) => loops));
  const sides = [bounds.mostUMm - bounds.leastUMm, bounds.mostVMm - bounds.leastVMm];
  const sheet = sheets.find(({ id }) => id === part.sheetId);
  return {
    id: isWhole ? part.id : (ids[0] ?? part.id),
    adds: isWhole ? [part.id] : ids,
    part,
    strips,
    benchSeams: seams.filter((seam) => liesFlat(seam, part) && seam.stripIds.every((id) => ids.includes(id))),
    lengthMm: Math.max(...sides),
    widthMm: Math.min(...sides),
    ribIds: ribsUnder(part, isWhole ? undefined : bounds, sheet, jig),
    middle: middleOf(part, sheet, isWhole ? undefined : bounds),
  };
}

type Bounds = ReturnType<typeof boundsOfLoops>;

/** Ribs that the part rests on; for a single strip of it only those whose station lies within the strip. */
function ribsUnder(part: Part, bounds: Bounds | undefined, sheet: Sheet | undefined, jig: Jig): string[] {
  return jig.ribs
    .filter(({ heights }) => heights.some(({ partId }) => partId === part.id))
    .filter((rib) => bounds === undefined || isUnder(rib, part, bounds, sheet))
    .map(({ id }) => id);
}

function isUnder({ runs, atMm }: Rib, part: Part, bounds: Bounds, sheet: Sheet | undefined): boolean {
  switch (sheet?.kind) {
    case "section": {
      if (runs === "along") return atMm > bounds.leastVMm && atMm < bounds.mostVMm;
      const { chart } = sheet;
      const xi = xiOfPlan(chart, { x: atMm, y: chart.pivotYMm });
      const uMm = part.stretches
        ? fibreOf(sheet, part.stretches).flatAt(bendLine(sheet).middleAt(xi))
        : uAtPlace(chart, placeOfXi(chart, xi));
      return uMm > bounds.leastUMm && uMm < bounds.mostUMm;
    }
    case "transition": {
      const along = rulingsWithin(part, bounds).map(({ x, y }) => (runs === "along" ? y : x));
      return along.some((value) => value <= atMm) && along.some((value) => value >= atMm);
    }
    default:
      return true;
  }
}

/** The ends in space of a transition's rulings, of all or of those that lie on a strip of it. */
const rulingsWithin = ({ rulings }: Part, bounds: Bounds | undefined): readonly SpacePoint[] =>
  rulings
    .filter(({ from, to }) => {
      const [u, v] = [(from.u + to.u) / 2, (from.v + to.v) / 2];
      return (
        bounds === undefined ||
        (u >= bounds.leastUMm && u <= bounds.mostUMm && v >= bounds.leastVMm && v <= bounds.mostVMm)
      );
    })
    .flatMap(({ fromSpace, toSpace }) => [fromSpace, toSpace]);

/** The middle of a part in plan, or of a strip of it: of a section by its v, of a transition by its rulings. */
function middleOf(part: Part, sheet: Sheet | undefined, bounds: Bounds | undefined): PlanPoint {
  switch (sheet?.kind) {
    case "section": {
      const middle = middleOfPoints(sheet.planLoops.flat());
      if (bounds !== undefined) return { x: middle.x, y: (bounds.leastVMm + bounds.mostVMm) / 2 };
      return { x: middle.x, y: part.hand === "left" ? -middle.y : middle.y };
    }
    case "transition":
      return middleOfPoints(rulingsWithin(part, bounds));
    default:
      return middleOfPoints(part.seat.map(({ at }) => at));
  }
}

function middleOfPoints(points: readonly PlanPoint[]): PlanPoint {
  const between = (values: readonly number[]) =>
    values.length === 0
      ? 0
      : (values.reduce((a, b) => Math.min(a, b)) + values.reduce((a, b) => Math.max(a, b))) / 2;
  return { x: between(points.map(({ x }) => x)), y: between(points.map(({ y }) => y)) };
}

/** The bare foam of a unit, kg. */
export const unitMassKg = ({ part, strips }: GlueUnit, project: Pick<Project, "materials">): number =>
  strips.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) *
  part.thicknessMm *
  1e-9 *
  (foamOf(project, part.foamId)?.densityKgPerM3 ?? 0);

/** Whether a unit is the mirror image of another: the same sheet's other hand, whole. */
export const isImageOf = (a: GlueUnit, b: GlueUnit): boolean =>
  a.part.sheetId === b.part.sheetId &&
  a.part.hand !== b.part.hand &&
  a.id === partIdOf(a.part.sheetId, a.part.hand) &&
  b.id === partIdOf(b.part.sheetId, b.part.hand);
