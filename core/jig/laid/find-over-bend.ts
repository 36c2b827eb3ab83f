import { springbackShare } from "../../bending/index.ts";
import type { RunPast } from "../../cutting/index.ts";
import type { Problem } from "../../foundation/index.ts";
import type { Part } from "../../patterns/index.ts";
import { foamOf, makingOf, type Project } from "../../project/index.ts";
import { bendLine, type LyingSheet, type SectionSheet, type Sheet, xiOfPlan } from "../../surfaces/index.ts";
import { restingDepth } from "../resting-depth.ts";
import { heightOver, movedCrossing, type OverBentLine, overBentLine } from "./over-bent-line.ts";

export type OverBendGround = Pick<Project, "jig" | "skins" | "materials" | "bending">;

/** Why ribs cannot be bent too far. */
export type NoOverBend = "cradle" | "fence" | "unlike" | "skin";

/** How the ribs would be bent too far, or are; or why they cannot be. */
export interface OverBend {
  /** The largest share of a bend that is given back with one skin. */
  readonly share: number;
  /** The x that keeps its height and its slope. */
  readonly keepXMm: number;
  /** By sheet: how its middle is bent. */
  readonly lines: ReadonlyMap<string, OverBentLine>;
  /** How much higher above ground the resting face comes to lie over an x of the plan; 0 beside the tray. */
  readonly liftAt: (xMm: number) => number;
  /** By sheet: the x that a place of its resting face comes to lie at. */
  readonly movedX: (sheetId: string, xMm: number) => number;
  /** The x as drawn of what comes to lie over an x. */
  readonly drawnX: (xMm: number) => number;
  readonly why?: NoOverBend;
}

interface Sources {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  readonly pasts: readonly RunPast[];
  readonly project: OverBendGround;
}

/** Faces that lie apart by no more than this are alike, mm: glue fills it. */
const ALIKE_MM = 0.3;
/** Who gives back more than this has no skin to speak of. */
const MOST_SHARE = 0.8;

/**
 * How far the ribs would have to be bent so that the tray, let go with one skin, keeps the drawn shape; undefined where
 * nothing is bent cold. It is the same lift over every x, so it is for trays of sections that all bend alike and carry no
 * fences; a cradle makes it needless.
 */
export function findOverBend({ sheets, parts, pasts, project }: Sources): OverBend | undefined {
  const lying = sheets.filter(
    (sheet): sheet is LyingSheet => sheet.kind !== "fence" && sheet.planLoops.length > 0,
  );
  const bent = parts.filter(
    ({ kind, zones }) => kind === "section" && zones.some(({ verdict }) => verdict === "bend cold"),
  );
  if (bent.length === 0) return undefined;
  const keepXMm = project.jig.lie?.overBend?.keepXMm ?? middleOf(lying);
  const share = Math.max(...bent.map((part) => shareOf(part, project)));
  const none = {
    share,
    keepXMm,
    lines: new Map(),
    liftAt: () => 0,
    movedX: same,
    drawnX: (xMm: number) => xMm,
  };
  if (makingOf(project).cradle !== undefined) return { ...none, why: "cradle" };
  if (sheets.some(({ kind }) => kind === "fence")) return { ...none, why: "fence" };
  if (!(share <= MOST_SHARE)) return { ...none, why: "skin" };
  const sections = lying.filter(
    (sheet): sheet is SectionSheet => sheet.kind === "section" && sheet.chart.tanHeading === 0,
  );
  const depthOf = restingDepth(project.jig.attitude);
  const made = sections.flatMap((sheet) => {
    const part = parts.find(({ sheetId }) => sheetId === sheet.id);
    if (!part) return [];
    const depthMm = depthOf(sheet.depths);
    const settings = { share: shareOf(part, project), keepXMm, depthMm, netMm: netOf(sheet, pasts) };
    const line = overBentLine(sheet, part, settings);
    const movedX = movedCrossing(sheet, [line.drawn, line.bent], depthMm);
    const drawnX = movedCrossing(sheet, [line.bent, line.drawn], depthMm);
    return [{ sheet, line, movedX, drawnX, liftAt: liftOver(sheet, line, depthMm) }];
  });
  const isAlike =
    made.length === lying.length &&
    made.every(({ sheet: { planBox } }) => planBox[0].x <= keepXMm && planBox[1].x >= keepXMm) &&
    made.every((one, i) => made.slice(0, i).every((other) => isLiftedAlike(one, other)));
  if (!isAlike) return { ...none, why: "unlike" };
  return {
    share,
    keepXMm,
    lines: new Map(made.map(({ sheet, line }) => [sheet.id, line])),
    liftAt: (xMm) => made.find(({ sheet }) => isUnder(sheet, xMm))?.liftAt(xMm) ?? 0,
    movedX: (sheetId, xMm) => made.find(({ sheet }) => sheet.id === sheetId)?.movedX(xMm) ?? xMm,
    drawnX: (xMm) => made.find(({ sheet }) => isUnder(sheet, xMm))?.drawnX(xMm) ?? xMm,
  };
}

const same = (_sheetId: string, xMm: number): number => xMm;

/** Whether the ribs are bent too far: where the builder wants it and it can be. */
export const isOverBent = (overBend: OverBend | undefined, { jig }: Pick<Project, "jig">): boolean =>
  jig.lie?.overBend !== undefined && overBend !== undefined && overBend.why === undefined;

/** What is wrong where the builder wants it and it cannot be. Problem: no-over-bend. */
export function overBendProblem(
  overBend: OverBend | undefined,
  { jig }: Pick<Project, "jig">,
): readonly Problem[] {
  if (jig.lie?.overBend === undefined || overBend?.why === undefined) return [];
  return [
    {
      kind: "no-over-bend",
      place: { setting: "jig.lie.overBend.keepXMm" },
      name: "the ribs",
      why: overBend.why,
    },
  ];
}

/** What a part gives back once the face that looks up on the jig is skinned. */
function shareOf(part: Part, { jig, skins, materials, bending }: OverBendGround): number {
  const foam = foamOf({ materials }, part.foamId);
  if (!foam) return 0;
  const layer = { modulusMPa: foam.modulusMPa, thicknessMm: part.thicknessMm };
  const skinMm = jig.attitude === "upright" ? skins.upperMm : skins.lowerMm;
  const skin = skinMm > 0 ? [{ modulusMPa: bending.skinModulusMPa, thicknessMm: skinMm }] : [];
  return springbackShare([layer], [...skin, layer]);
}

function middleOf(lying: readonly LyingSheet[]): number {
  const [least, most] = [
    Math.min(...lying.map(({ planBox }) => planBox[0].x)),
    Math.max(...lying.map(({ planBox }) => planBox[1].x)),
  ];
  return (least + most) / 2;
}

/** The lengths along the middle between which the foam is bent as drawn: to the trim lines that it runs past. */
function netOf(sheet: SectionSheet, pasts: readonly RunPast[]): readonly [number, number] {
  const { lengthMm, middleAt } = bendLine(sheet);
  const lengths = pasts
    .filter(({ sheetId }) => sheetId === sheet.id)
    .map(({ line, toward }) => ({ toward, mm: line.map((p) => middleAt(xiOfPlan(sheet.chart, p))) }));
  const first = lengths.flatMap(({ toward, mm }) => (toward === "first" ? [Math.min(...mm)] : []));
  const last = lengths.flatMap(({ toward, mm }) => (toward === "last" ? [Math.max(...mm)] : []));
  return [Math.max(0, ...first), Math.min(lengthMm, ...last)];
}

const isUnder = ({ planBox: [least, most] }: SectionSheet, xMm: number): boolean =>
  xMm >= least.x - REACH_MM && xMm <= most.x + REACH_MM;

/** Foam runs past edges by no more than this, mm. */
const REACH_MM = 400;

/** How much higher a face lies over an x. */
function liftOver(
  sheet: SectionSheet,
  { drawn, bent }: OverBentLine,
  depthMm: number,
): (xMm: number) => number {
  const [was, is] = [heightOver(sheet, drawn, depthMm), heightOver(sheet, bent, depthMm)];
  return (xMm) => {
    const p = { x: xMm, y: sheet.chart.pivotYMm };
    return (is(p) ?? 0) - (was(p) ?? 0);
  };
}

const LOOKS = 24;

interface Lifted {
  readonly sheet: SectionSheet;
  readonly liftAt: (xMm: number) => number;
}

/** Whether two sheets are lifted alike wherever both lie over a rib. */
function isLiftedAlike(one: Lifted, other: Lifted): boolean {
  const fromMm = Math.max(one.sheet.planBox[0].x, other.sheet.planBox[0].x);
  const toMm = Math.min(one.sheet.planBox[1].x, other.sheet.planBox[1].x);
  return Array.from({ length: LOOKS + 1 }, (_, i) => fromMm + ((toMm - fromMm) * i) / LOOKS).every(
    (xMm) => Math.abs(one.liftAt(xMm) - other.liftAt(xMm)) <= ALIKE_MM,
  );
}
