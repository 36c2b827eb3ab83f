import { at, type Memory, NO_MEMORY, type Problem } from "../foundation/index.ts";
import { type FlatEdge, type Part, partPlaces } from "../patterns/index.ts";
import { lieSettingsOf, type Project } from "../project/index.ts";
import type { LyingSheet, SectionSheet, Sheet, TransitionSheet } from "../surfaces/index.ts";
import { bentEnds, HELD_BY_THICKNESSES } from "./bent-ends.ts";
import { cutLinesOf } from "./cut-lines.ts";
import type { CuttingGround } from "./divide-part.ts";
import { allowanceOf } from "./kerf-outside.ts";
import { type PastSettings, pastEnd, type RunPast } from "./past-end.ts";
import type { Strip } from "./types.ts";
import { stockFor, usableStock } from "./usable-stock.ts";

export type RunPastGround = CuttingGround & Pick<Project, "jig" | "skins" | "materials">;

interface Sources {
  readonly parts: readonly Part[];
  readonly sheets: readonly Sheet[];
  readonly project: RunPastGround;
  readonly memory?: Memory;
}

interface Ran {
  readonly strips: readonly Strip[];
  readonly pasts: readonly RunPast[];
  readonly problems: readonly Problem[];
}

/**
 * The strips with foam left standing past every free edge that a cold bend reaches, to be held by over a rib and trimmed
 * after the first skin; their finished outlines stay as they are. Ribs along carry such a bend themselves: without ribs
 * across nothing runs past. Problem: no-run-past, where another part, the edge's slant or the stock leaves no room, and for
 * a transition, which is not cut longer.
 */
export function runPast(
  strips: readonly Strip[],
  { parts, sheets, project, memory = NO_MEMORY }: Sources,
): Ran {
  const lengthMm = lieSettingsOf(project).runPastMm;
  if (!(lengthMm > 0) || project.jig.across.kind === "none") return { strips, pasts: [], problems: [] };
  const lying = sheets.filter(
    (sheet): sheet is LyingSheet => sheet.kind !== "fence" && sheet.planLoops.length > 0,
  );
  const ran = lying.flatMap((sheet): readonly Ran[] => {
    if (sheet.kind === "transition")
      return [{ strips: [], pasts: [], problems: bentTransition(sheet, parts, { project, lengthMm }) }];
    const hands = parts.filter(({ sheetId }) => sheetId === sheet.id);
    const own = strips.filter(({ partId }) => hands.some(({ id }) => id === partId));
    const from = [...hands, ...own, ...lying, project.jig, project.skins, project.materials, project.cutting];
    const settings = { project, lying, lengthMm };
    return [memory.recall(`run past ${sheet.id}`, from, () => ranPast(sheet, hands, own, settings))];
  });
  const changed = new Map(ran.flatMap((one) => one.strips.map((strip) => [strip.id, strip] as const)));
  return {
    strips: strips.map((strip) => changed.get(strip.id) ?? strip),
    pasts: ran.flatMap(({ pasts }) => pasts),
    problems: ran.flatMap(({ problems }) => problems),
  };
}

/** One sheet on all its hands. */
function ranPast(
  sheet: SectionSheet,
  hands: readonly Part[],
  strips: readonly Strip[],
  settings: PastSettings & { readonly project: RunPastGround },
): Ran {
  const [part] = hands;
  if (!part) return { strips, pasts: [], problems: [] };
  const tries = bentEnds(part).map((end) => pastEnd(sheet, hands, end, settings));
  // Both halves of an edge across the centre line have the same in their way.
  const [blocked] = tries.filter(({ why }) => why !== undefined);
  const problems = blocked?.why === undefined ? [] : [noRunPast(part, blocked.past, blocked.why)];
  const pasts = tries
    .flatMap(({ past, why }) => (why === undefined ? [past] : []))
    .toSorted((a, b) => a.ribXMm[0] - b.ribXMm[0]);
  const [first] = pasts;
  if (!first) return { strips, pasts, problems };
  const long = strips.map((strip) => longer(strip, pasts, part, settings.project));
  const isTooLong = long.some(
    ({ stockId }, i) => stockId === undefined && at(strips, i).stockId !== undefined,
  );
  if (isTooLong) return { strips, pasts: [], problems: [...problems, noRunPast(part, first, "stock")] };
  return { strips: long, pasts, problems };
}

/**
 * A transition is not cut longer: its first free end that a cold bend reaches and no rib stands near is named, once for all
 * hands. Automatic ribs stand inside every end.
 */
function bentTransition(
  sheet: TransitionSheet,
  parts: readonly Part[],
  { project, lengthMm }: Pick<PastSettings, "project" | "lengthMm">,
): readonly Problem[] {
  const part = parts.find(({ sheetId }) => sheetId === sheet.id);
  if (!part) return [];
  const leastMm = HELD_BY_THICKNESSES * part.thicknessMm;
  const firstMm = Math.min(...part.zones.map(({ fromUMm }) => fromUMm));
  const lastMm = Math.max(...part.zones.map(({ toUMm }) => toUMm));
  const cold = part.zones.filter(({ verdict }) => verdict === "bend cold");
  const isBent = ({ points }: FlatEdge): boolean => {
    const middleMm = points.reduce((sum, { u }) => sum + u, 0) / points.length;
    return middleMm < (firstMm + lastMm) / 2
      ? cold.some(({ fromUMm }) => fromUMm < firstMm + leastMm)
      : cold.some(({ toUMm }) => toUMm > lastMm - leastMm);
  };
  const ends = part.loops.flatMap((loop) => loop.edges).filter(({ edgeId }) => CLOSING.includes(edgeId));
  const place = partPlaces([sheet], part);
  const isHeld = ({ points }: FlatEdge): boolean => {
    const { across } = project.jig;
    const xs = points.flatMap((flat) => place?.(flat, 0).x ?? []);
    const isNear = (mm: number) => xs.some((x) => Math.abs(x - mm) < NEAR_MM);
    return across.kind === "automatic" || (across.kind === "typed" && across.atMm.some(isNear));
  };
  const bent = ends.find(
    (edge) => edge.role === "free" && edge.letIn === undefined && isBent(edge) && !isHeld(edge),
  );
  return bent ? [noRunPast(part, { edgeName: bent.name, lengthMm }, "transition")] : [];
}

/** A rib so near an end holds it, mm. */
const NEAR_MM = 40;
/** The first and the last ruling of a transition. */
const CLOSING: readonly string[] = ["start", "end"];

function noRunPast(
  { itemId, id, name }: Part,
  { edgeName, lengthMm }: Pick<RunPast, "edgeName" | "lengthMm">,
  why: Extract<Problem, { kind: "no-run-past" }>["why"],
): Problem {
  const place = { itemId, partId: id, setting: "jig.lie.runPastMm" };
  return { kind: "no-run-past", place, name, edgeName, lengthMm, why };
}

/** A strip with foam left standing past those of its edges that run past. */
function longer(strip: Strip, pasts: readonly RunPast[], part: Part, project: RunPastGround): Strip {
  const withFoam = (edge: FlatEdge): FlatEdge => {
    const past = pasts.find(({ edgeId }) => edgeId === edge.edgeId);
    return past ? { ...edge, spare: { lengthMm: past.lengthMm, for: "hold" } } : edge;
  };
  const loops = strip.loops.map(({ edges }) => ({ edges: edges.map(withFoam) }));
  const { linesMm } = cutLinesOf(loops, allowanceOf(project));
  const { stockId: _, ...rest } = strip;
  const stockId = stockFor(linesMm, usableStock(part, project));
  return { ...rest, loops, cutLinesMm: linesMm, ...(stockId !== undefined && { stockId }) };
}
