import type { Strip } from "../cutting/index.ts";
import type { FlatPoint, ProblemKind, ProblemLevel, ProblemPlace } from "../foundation/index.ts";
import type { GlueStep } from "../glue-up/index.ts";
import type { Baseboard, BendHold, Jig, Lie, Rib, RibSet } from "../jig/index.ts";
import type { Joint } from "../joints/index.ts";
import type { FittedEdge, MarkingRow, MarkingTable } from "../marking/index.ts";
import type { Panel, PanelPiece } from "../panels/index.ts";
import type { Part, PartEdge } from "../patterns/index.ts";
import type { TwistVerdict } from "../rulings/index.ts";
import type { ShoppingList } from "../shopping/index.ts";
import type { LaidCloth, LaidPatch } from "../skins/index.ts";
import type { LaidGroup, LaidPiece, LaidStockSheet } from "../stock/index.ts";
import type { Totals } from "../totals/index.ts";
import type { Design } from "./design.ts";
import type { ReportPlate } from "./report-plates.ts";
import type { ReportSection } from "./report-sections.ts";
import type { ReportTemplates } from "./report-templates.ts";

/** A strip in the report: a piece cut from stock, with its marking-out table. */
export interface ReportStrip {
  readonly id: string;
  readonly outlineMm: readonly FlatPoint[];
  readonly holesMm: readonly (readonly FlatPoint[])[];
  /** The lines to cut by: see `Strip.cutLinesMm`. */
  readonly cutLinesMm: readonly (readonly FlatPoint[])[];
  /** The same on the face shown, where bevels move them: see `ShownFace.cutLinesMm`. */
  readonly faceLinesMm: readonly (readonly FlatPoint[])[];
  readonly areaMm2: number;
  /** Relief slots, from front to rear. */
  readonly slots: NonNullable<Strip["slots"]>;
  /** Where the tapers of its scarfs begin, and the face that each is in. */
  readonly tapers: NonNullable<Strip["tapers"]>;
  /** Edges of a closer that are cut to a measured gap, with the spare on them and their net lines on the face shown. */
  readonly fittedEdges: readonly FittedEdge[];
  /** Edges that foam runs past, to be trimmed along their net lines. */
  readonly pastEdges: readonly FittedEdge[];
  readonly stockId: string | null;
  readonly edges: readonly PartEdge[];
  /** The marking-out table: the datum starts at `datumMm` and runs along u. */
  readonly stations: readonly MarkingRow[];
  readonly datumMm: FlatPoint | null;
  readonly straightMissMm: number | null;
  readonly battenMissMm: number | null;
  readonly joinedBy: MarkingTable["joinedBy"] | null;
}

/** A part in the report: one sheet on one hand, flat outline seen from `faceShown`. */
export interface ReportPart {
  readonly id: string;
  readonly sheetId: string;
  readonly name: string;
  readonly kind: Part["kind"];
  readonly hand: Part["hand"];
  readonly faceShown: Part["faceShown"];
  readonly thicknessMm: number;
  /** Area of the neutral fibre by quadrature in space, and of the flat outline as written. */
  readonly spaceAreaMm2: number;
  readonly flatAreaMm2: number;
  /** Lengths: drawn on the air side; in space and flat at the neutral fibre. */
  readonly edges: readonly PartEdge[];
  /** Counter-clockwise; `holesMm` clockwise; `furtherOutlinesMm` where the part is in several islands. */
  readonly outlineMm: readonly FlatPoint[];
  readonly holesMm: readonly (readonly FlatPoint[])[];
  readonly furtherOutlinesMm: readonly (readonly FlatPoint[])[];
  /** Least radius of the neutral fibre; null where the part is flat. */
  readonly minRadiusMm: number | null;
  /** Largest outer-fibre strain t / (2 R). */
  readonly maxStrain: number;
  readonly verdict: Part["verdict"];
  readonly zones: Part["zones"];
  /** Where the fibre that keeps its length is not the middle of the foam. */
  readonly stretches: NonNullable<Part["stretches"]>;
  /** A fence's upper edge: heights of its seat on the mid-plane and at both foam faces, and the bevel between. */
  readonly seat: Part["seat"];
  /** Of a transition: how far its plane turns along a ruling at most, what pressing it flat costs, and its rulings. */
  readonly twistVerdict: TwistVerdict | null;
  readonly maxTwistRad: number | null;
  readonly membraneStrain: number | null;
  readonly pressStrain: number | null;
  readonly rulings: Part["rulings"];
  /** What openings leave beside them. */
  readonly webs: NonNullable<Part["webs"]>;
  readonly strips: readonly ReportStrip[];
}

/** A joint in the report, with the strips on both sides that have a piece of its edge. */
export interface ReportJoint extends Joint {
  readonly stripIds: readonly [readonly string[], readonly string[]];
}

/** A glue-up step in the report. `adds`: the strips that come for the first time; `lays`: what is set in place whole. */
export interface ReportGlueStep extends GlueStep {
  readonly lays: readonly string[];
}

/** A group of pieces and the sheets that they lie on, in the report. */
export interface ReportStock extends Pick<LaidGroup, "groupId" | "name" | "standing" | "unplaced"> {
  readonly pieceIds: readonly string[];
  readonly sheets: readonly (Omit<LaidStockSheet, "pieces"> & {
    readonly pieces: readonly Omit<LaidPiece, "linesMm">[];
  })[];
  readonly sheetAreaMm2: number;
  readonly pieceAreaMm2: number;
  readonly offcutAreaMm2: number;
  readonly wasteShare: number;
  /** In the project's currency; null where a sheet has no price. */
  readonly price: number | null;
  readonly wastePrice: number | null;
}

/** A cloth and its lengths in the report: the outlines are those of the patches. */
export interface ReportCloth extends Omit<LaidCloth, "lengths"> {
  readonly lengths: readonly {
    readonly lengthMm: number;
    readonly pieces: readonly Omit<LaidPatch, "linesMm">[];
  }[];
}

/** A panel in the report: the outlines of its pieces are those of the strips. */
export interface ReportPanel extends Omit<Panel, "pieces"> {
  readonly pieces: readonly Omit<PanelPiece, "linesMm">[];
}

/** A problem in the report: its kind, its words, what to click, and how much it stops. */
export interface ReportProblem {
  readonly kind: ProblemKind;
  readonly level: ProblemLevel;
  readonly words: string;
  readonly name: string;
  readonly place: ProblemPlace;
}

/**
 * The numbers of every stage under stable names with their units: the content of `report.json`. Lengths in mm,
 * areas in mm², angles in rad, masses in kg, times in hours.
 */
export interface Report {
  readonly format: "traywright-report";
  readonly version: 1;
  readonly projectId: string;
  readonly title: string;
  readonly parts: readonly ReportPart[];
  readonly plates: readonly ReportPlate[];
  readonly joints: readonly ReportJoint[];
  /** Edges that lie on each other and are not joined. */
  readonly jointOffers: Design["jointOffers"];
  readonly seams: Design["seams"];
  readonly ribs: readonly Rib[];
  readonly baseboard: Baseboard;
  readonly assembly: Jig["assembly"];
  readonly posts: Jig["posts"];
  readonly fenceStands: Jig["fenceStands"];
  readonly release: Jig["release"];
  readonly cradle: RibSet | null;
  /** How every bend is held on the jig, what it gives back, and what wants care. */
  readonly deviation: Lie;
  /** How the ribs are over-bent for springback, or would be; null where nothing is bent cold. */
  readonly overBend: Design["jig"]["overBend"] | null;
  readonly holds: readonly BendHold[];
  readonly glueUp: readonly ReportGlueStep[];
  /** How the faces are laminated. */
  readonly skins: Design["skins"];
  /** Panels that fences are cut from, and how these are bonded on. */
  readonly panels: readonly ReportPanel[];
  readonly panelBonding: {
    readonly bonds: Design["panels"]["bonds"];
    readonly cards: Design["panels"]["bondCards"];
    readonly steps: Design["panels"]["bondSteps"];
  };
  readonly panelTasks: Design["panels"]["tasks"];
  /** Every patch on its roll, without its lines. */
  readonly cloth: readonly ReportCloth[];
  /** Where every patch lies on its face. */
  readonly patchMaps: Design["patchMaps"];
  /** Which piece lies on which sheet. */
  readonly stock: readonly ReportStock[];
  /** All the work on a calendar. */
  readonly schedule: Design["schedule"];
  readonly totals: Totals;
  readonly templates: ReportTemplates;
  /** The cross-sections of the bare tray that the book draws, front to rear. */
  readonly sections: readonly ReportSection[];
  /** What it weighs. */
  readonly weight: Design["weight"];
  /** Everything to be bought, paper for the templates included. */
  readonly shopping: ShoppingList;
  /** The words pinned to the drawing. */
  readonly notes: readonly { readonly id: string; readonly view: "plan" | "side"; readonly text: string }[];
  readonly problems: readonly ReportProblem[];
}
