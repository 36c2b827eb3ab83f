import type { Strip } from "../cutting/index.ts";
import { levelOf, roundTo, wordProblem } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import { fittedEdges, shownFace } from "../marking/index.ts";
import type { Panel } from "../panels/index.ts";
import { type FlatLoop, loopAreaMm2, type Part, polygonOfLoop } from "../patterns/index.ts";
import type { LaidCloth } from "../skins/index.ts";
import type { LaidGroup } from "../stock/index.ts";
import type { Design } from "./design.ts";
import { type PaperWork, paperWork } from "./paper-work.ts";
import { reportPlates } from "./report-plates.ts";
import { reportSections } from "./report-sections.ts";
import { reportTemplates } from "./report-templates.ts";
import type {
  Report,
  ReportCloth,
  ReportGlueStep,
  ReportJoint,
  ReportPanel,
  ReportPart,
  ReportStock,
  ReportStrip,
} from "./report-types.ts";
import { shoppingOf } from "./shopping-of.ts";

/** Lengths and angles keep this many places: a nanometre, far below anything that is cut. */
const PLACES = 6;

/** The report of a design, in the design's own order, rounded to a millionth of each unit. */
export function reportOf(design: Design, work: PaperWork = paperWork(design)): Report {
  const { project, problems } = design;
  const report: Report = {
    format: "traywright-report",
    version: 1,
    projectId: project.id,
    title: project.title,
    parts: design.parts.map((part) => reportPart(design, part)),
    plates: reportPlates(design),
    joints: design.joints.map((joint) => ({ ...joint, stripIds: stripsAtJoint(design, joint) })),
    jointOffers: design.jointOffers,
    seams: design.seams,
    ribs: design.jig.ribs,
    baseboard: design.jig.baseboard,
    assembly: design.jig.assembly,
    posts: design.jig.posts,
    fenceStands: design.jig.fenceStands,
    release: design.jig.release,
    cradle: design.jig.cradle ?? null,
    overBend: design.jig.overBend ?? null,
    deviation: design.lie,
    holds: design.holds,
    glueUp: reportGlueUp(design),
    skins: design.skins,
    panels: design.panels.panels.map(reportPanel),
    panelBonding: {
      bonds: design.panels.bonds,
      cards: design.panels.bondCards,
      steps: design.panels.bondSteps,
    },
    panelTasks: design.panels.tasks,
    cloth: design.cloth.map(reportCloth),
    patchMaps: design.patchMaps,
    stock: design.stock.map(reportStock),
    schedule: design.schedule,
    totals: design.totals,
    templates: reportTemplates(design, work),
    sections: reportSections(design),
    weight: design.weight,
    shopping: shoppingOf(design, work),
    notes: project.notes.map(({ id, view, text }) => ({ id, view, text })),
    problems: problems.map((problem) => ({
      kind: problem.kind,
      level: levelOf(problem),
      words: wordProblem(problem),
      name: problem.name,
      place: problem.place,
    })),
  };
  return rounded(report);
}

const reportCloth = (cloth: LaidCloth): ReportCloth => ({
  ...cloth,
  lengths: cloth.lengths.map(({ lengthMm, pieces }) => ({
    lengthMm,
    pieces: pieces.map(({ linesMm: _, ...piece }) => piece),
  })),
});

const reportPanel = ({ pieces, ...panel }: Panel): ReportPanel => ({
  ...panel,
  pieces: pieces.map(({ linesMm: _, ...piece }) => piece),
});

function reportPart(design: Design, part: Part): ReportPart {
  const strips = design.strips.filter((strip) => strip.partId === part.id);
  const [first, ...rest] = part.loops;
  const isOutline = (loop: FlatLoop) => loopAreaMm2(loop) > 0;
  return {
    id: part.id,
    sheetId: part.sheetId,
    name: part.name,
    kind: part.kind,
    hand: part.hand,
    faceShown: part.faceShown,
    thicknessMm: part.thicknessMm,
    spaceAreaMm2: part.spaceAreaMm2,
    flatAreaMm2: part.flatAreaMm2,
    edges: part.edges,
    outlineMm: first ? polygonOfLoop(first) : [],
    holesMm: rest.filter((loop) => !isOutline(loop)).map(polygonOfLoop),
    furtherOutlinesMm: rest.filter(isOutline).map(polygonOfLoop),
    minRadiusMm: part.minRadiusMm ?? null,
    maxStrain: part.maxStrain,
    verdict: part.verdict,
    zones: part.zones,
    stretches: part.stretches ?? [],
    seat: part.seat,
    twistVerdict: part.twist?.verdict ?? null,
    maxTwistRad: part.twist?.maxTwistRad ?? null,
    membraneStrain: part.twist?.membraneStrain ?? null,
    pressStrain: part.twist?.pressStrain ?? null,
    rulings: part.rulings,
    webs: part.webs ?? [],
    strips: strips.map((strip) => reportStrip(design, strip, part)),
  };
}

function stripsAtJoint({ strips }: Design, joint: Joint): ReportJoint["stripIds"] {
  const onSide = (side: 0 | 1) =>
    strips
      .filter(
        ({ partId, edges }) =>
          partId === joint.partIds[side] && edges.some(({ edgeId }) => edgeId === joint.edgeIds[side]),
      )
      .map(({ id }) => id);
  return [onSide(0), onSide(1)];
}

function reportStrip(design: Design, strip: Strip, part: Part): ReportStrip {
  const table = design.marking.find((candidate) => candidate.stripId === strip.id);
  return {
    id: strip.id,
    outlineMm: strip.outlineMm,
    holesMm: strip.holesMm,
    cutLinesMm: strip.cutLinesMm,
    faceLinesMm: shownFace(strip, part.thicknessMm, design.project).cutLinesMm,
    areaMm2: strip.areaMm2,
    slots: strip.slots ?? [],
    tapers: strip.tapers ?? [],
    fittedEdges: fittedEdges(strip, part.thicknessMm, design.project, "gap"),
    pastEdges: fittedEdges(strip, part.thicknessMm, design.project, "hold"),
    stockId: strip.stockId ?? null,
    edges: strip.edges,
    stations: table?.rows ?? [],
    datumMm: table?.origin ?? null,
    straightMissMm: table?.straightMissMm ?? null,
    battenMissMm: table?.battenMissMm ?? null,
    joinedBy: table?.joinedBy ?? null,
  };
}

function reportStock({ figures, sheets, ...group }: LaidGroup): ReportStock {
  const { price, wastePrice, ...areas } = figures;
  return {
    ...group,
    sheets: sheets.map((sheet) => ({
      ...sheet,
      pieces: sheet.pieces.map(({ linesMm: _, ...piece }) => piece),
    })),
    ...areas,
    price: price ?? null,
    wastePrice: wastePrice ?? null,
  };
}

/** Every strip is added once: on the bench where it is glued to its neighbours there, else on the jig. */
function reportGlueUp(design: Design): readonly ReportGlueStep[] {
  const seen = new Set<string>();
  return design.glueUp.map((step) => {
    const stripIds = step.adds.flatMap((id) =>
      design.strips.filter((strip) => strip.id === id || strip.partId === id).map((strip) => strip.id),
    );
    const adds = stripIds.filter((id) => !seen.has(id));
    for (const id of adds) seen.add(id);
    return { ...step, adds, lays: step.place === "jig" ? step.adds : [] };
  });
}

/** The same value with every number in it rounded. */
function rounded<T>(value: T): T;
function rounded(value: unknown): unknown {
  if (typeof value === "number") return roundTo(value, PLACES);
  if (Array.isArray(value)) return value.map((item: unknown) => rounded(item));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, item]: [string, unknown]) => [key, rounded(item)]),
  );
}
