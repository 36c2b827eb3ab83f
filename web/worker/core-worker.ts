import { expose, transfer } from "comlink";
import type { DrawingSet, SpaceShape, TemplateCount } from "../../core/book/index.ts";
import {
  type Design,
  designTray,
  layOutCloth,
  mapPatches,
  outlinesAhead,
  planWork,
  type Shapes,
  shapeTray,
  type Work,
} from "../../core/design.ts";
import { assert, newMemory, type Problem } from "../../core/foundation/index.ts";
import type { PartOutline } from "../../core/patterns/index.ts";
import type { Project } from "../../core/project/index.ts";
import type { Need } from "../../core/shopping/index.ts";
import { type LaidCloth, layCloth, type PatchMap } from "../../core/skins/index.ts";
import type { Solid } from "../../core/solids/index.ts";
import type { EaseLimits, Easing } from "../../core/surfaces/index.ts";
import { measureTray, type TrayMeasures } from "../../core/totals/index.ts";
import type { Pen } from "../../core/writers/index.ts";
import { planImport } from "../exchange/plan-import.ts";
import { type Crossing, newArrival, newDeparture } from "./crossing.ts";
import { outlineForScreen, shapesForScreen, workForScreen } from "./design-for-screen.ts";
import { easeIn } from "./ease.ts";
import { pageFonts } from "./fonts.ts";

/** What goes on paper: the true-size templates, or the build book. */
export type PaperKind = "templates" | "book";

/** Pages before they are made, with the pens that their lines are drawn with. */
export interface PagesAhead {
  readonly set: DrawingSet;
  readonly pens: Readonly<Record<string, Pen>>;
  readonly problems: readonly Problem[];
  /** Of the templates: what each part takes in each way. */
  readonly counts: readonly TemplateCount[];
}

/** What a shopping list needs besides a design. */
export interface ToBuy {
  readonly cloth: readonly LaidCloth[];
  readonly paper: readonly Need[];
}

/**
 * What this worker made last: from one change of the drawing to the next little is made anew. The work has a memory of
 * its own, since while the hand drags it is planned less often than the tray is shaped.
 */
const memory = newMemory();
const workMemory = newMemory();
let typed: Project | undefined;
let shaped: Shapes | undefined;
let designed: Design | undefined;
const takeProject = newArrival<Project>();
const sendShapes = newDeparture<Shapes>();
const sendWork = newDeparture<Work>();

/** The core's doors for the page; everything that crosses is plain data. Book and writers load when first asked. */
const doors = {
  /** Ahead of a design: the flat outlines of what was edited since the last one. */
  outlines(project: Crossing<Project>): readonly PartOutline[] {
    typed = takeProject(project);
    return shaped ? outlinesAhead(typed, shaped, memory).map(outlineForScreen) : [];
  },

  /** The first half of a design, of the document that came last, with lines as fine as the screen shows them. */
  shape(): Crossing<Shapes> {
    assert(typed !== undefined, "a document comes before its tray is shaped");
    shaped = shapeTray(typed, memory);
    return sendShapes(keepShapes(shapesForScreen(shaped)));
  },

  /** The other half, of what was shaped last. */
  plan(): Crossing<Work> {
    assert(shaped !== undefined, "a tray is shaped before its work is planned");
    workMemory.turn();
    const work = planWork(shaped, workMemory);
    designed = { ...shaped, ...work };
    return sendWork(keepWork(workForScreen(work)));
  },

  /** The tray in figures, to be compared with another. */
  measures: (project: Project): TrayMeasures => measureTray(designTray(project)),

  /** How the free edge of a transition can be eased. */
  ease: (project: Project, itemId: string, limits: EaseLimits): Easing | undefined =>
    easeIn(project, itemId, limits),

  /** Pieces laid on stock, told as they are found. */
  async layStock(...asked: Parameters<typeof import("./lay-stock.ts").layStock>): Promise<void> {
    const { layStock } = await import("./lay-stock.ts");
    layStock(...asked);
  },

  /** Every patch of cloth on its roll. */
  cloth: (project: Project): readonly LaidCloth[] => layOutCloth(designTray(project)).cloth,

  /** Where every patch lies in the design that was planned last. */
  patchMaps: (): readonly PatchMap[] => (designed ? mapPatches(designed).patchMaps : []),

  /** Cloth on its rolls and paper for the templates, of the design that was planned last: what a shopping list waits for. */
  async toBuy(): Promise<ToBuy> {
    if (designed === undefined) return { cloth: [], paper: [] };
    const { paperNeeds, paperWork } = await book();
    return {
      cloth: layCloth(designed.skins, designed.project),
      paper: paperNeeds(designed, paperWork(designed)),
    };
  },

  /** What a file from elsewhere would give. */
  planImport,

  /** Every strip in space, for pictures of the tray as it is put together. */
  async shapes(project: Project): Promise<readonly SpaceShape[]> {
    const { stripShapes } = await book();
    return stripShapes(designTray(project));
  },

  /** Every part, and every rib of jig and cradle, as a body in space, for the look at the tray in 3D; the numbers are handed over, not copied. */
  async solids(project: Project): Promise<readonly Solid[]> {
    const { jigSolids, traySolids } = await solids();
    const design = designTray(project);
    const made = [...traySolids(design), ...jigSolids(design.jig)];
    return transfer(made, [...new Set(made.flatMap(buffersOf))]);
  },

  async pages(project: Project, kind: PaperKind): Promise<PagesAhead> {
    const { PENS } = await writers();
    return { ...(await draw(project, kind)), pens: PENS };
  },

  async pdf(
    project: Project,
    kind: PaperKind,
    onPage: (done: number, all: number) => void,
  ): Promise<Uint8Array<ArrayBuffer>> {
    const { writePdf } = await writers();
    const { set } = await draw(project, kind);
    const bytes = new Uint8Array(writePdf(set, await pageFonts(), { onPage }));
    return transfer(bytes, [bytes.buffer]);
  },

  /** Everything that can be made, as one archive. */
  async pack(
    project: Project,
    onPage: (done: number, all: number) => void,
  ): Promise<Uint8Array<ArrayBuffer>> {
    const { packFiles, writeZip } = await writers();
    let last = 0;
    const { files } = packFiles(layOutCloth(designTray(project)), await pageFonts(), {
      // The archive itself is the last thing to be done.
      onPage: (done, all) => {
        last = all + 1;
        onPage(done, last);
      },
    });
    const bytes = new Uint8Array(writeZip(files, project.titleBlock.issuedOn));
    onPage(last, last);
    return transfer(bytes, [bytes.buffer]);
  },

  async report(project: Project): Promise<string> {
    const { reportOf } = await writers();
    return `${JSON.stringify(reportOf(layOutCloth(designTray(project))), null, 2)}\n`;
  },
};

export type CoreDoors = typeof doors;

expose(doors);

/** The short lists, which are made anew at every change, are kept where they say the same; the long ones are kept by the core. */
const keepShapes = (shapes: Shapes): Shapes => ({
  ...shapes,
  plates: memory.keep("screen plates", shapes.plates),
  joints: memory.keep("screen joints", shapes.joints),
  jointOffers: memory.keep("screen joint offers", shapes.jointOffers),
  problems: memory.keep("screen problems of shapes", shapes.problems),
});

const keepWork = (work: Work): Work => ({
  ...work,
  seams: workMemory.keep("screen seams", work.seams),
  glueUp: workMemory.keep("screen glue-up", work.glueUp),
  stock: workMemory.keep("screen stock", work.stock),
  totals: workMemory.keep("screen totals", work.totals),
  problems: workMemory.keep("screen problems", work.problems),
});

const book = () => import("../../core/book/index.ts");
const solids = () => import("../../core/solids/index.ts");
const writers = () => import("../../core/writers/index.ts");

async function draw(project: Project, kind: PaperKind): Promise<Omit<PagesAhead, "pens">> {
  const { drawBook, drawTemplates, paperWork, templateCounts } = await book();
  const design = designTray(project);
  if (kind === "book")
    return { set: drawBook(layOutCloth(design), await pageFonts()), problems: [], counts: [] };
  const work = paperWork(design);
  return {
    ...drawTemplates(design, await pageFonts(), work),
    counts: templateCounts(design, work.pieces),
  };
}

const buffersOf = ({ positions, triangles, outline, rulings, bend }: Solid): readonly ArrayBuffer[] =>
  [positions, triangles, outline, rulings, ...(bend ? Object.values(bend) : [])].flatMap((value) =>
    typeof value === "number" ? [] : [value.buffer],
  );
