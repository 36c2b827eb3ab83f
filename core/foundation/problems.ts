import type { PlanPoint } from "./vectors.ts";

/** What a click on a problem selects; ids of the document, or of a part, strip or rib made from it. */
export interface ProblemPlace {
  readonly itemId?: string;
  readonly profileId?: string;
  readonly nodeId?: string;
  /** The node is one of a fence's lower edge, not of its line in plan, or of a transition's free edge. */
  readonly line?: "lower-edge" | "first-edge" | "second-edge";
  readonly openingId?: string;
  readonly wingId?: string;
  readonly noteId?: string;
  readonly underlayId?: string;
  readonly partId?: string;
  readonly ribId?: string;
  /** The dotted name of a setting, such as `jig.across.spacingMm`. */
  readonly setting?: string;
}

/** How much a problem stops: "stop" means that something named was not made, "look" that it was. */
export type ProblemLevel = "stop" | "look";

interface Placed {
  readonly place: ProblemPlace;
  /** The builder's own name of the thing. */
  readonly name: string;
}

/**
 * Everything that a sketch, a file or a setting can get wrong, as data. The words for each kind stand in
 * `wording.ts`, and nowhere else.
 */
export type Problem =
  | (Placed & { readonly kind: "outline-open"; readonly gapMm: number })
  | (Placed & { readonly kind: "too-few-nodes"; readonly count: number; readonly needed: number })
  | (Placed & { readonly kind: "too-many-nodes"; readonly count: number; readonly most: number })
  | (Placed & { readonly kind: "too-many-corners"; readonly count: number; readonly most: number })
  | (Placed & { readonly kind: "zero-length-segment"; readonly nodeIds: readonly [string, string] })
  | (Placed & { readonly kind: "radius-does-not-fit"; readonly radiusMm: number; readonly largestMm: number })
  | (Placed & { readonly kind: "radius-needs-lines" })
  | (Placed & {
      readonly kind: "line-crosses-itself";
      readonly edgeIds: readonly [string, string];
      readonly at: PlanPoint;
    })
  | (Placed & { readonly kind: "profile-falls-back"; readonly atXMm: number; readonly fallbackMm: number })
  | (Placed & {
      readonly kind: "profile-too-short";
      readonly profileName: string;
      readonly missingFrontMm: number;
      readonly missingRearMm: number;
    })
  | (Placed & {
      readonly kind: "offset-exceeds-radius";
      readonly radiusMm: number;
      readonly offsetMm: number;
      readonly atXMm: number;
    })
  | (Placed & {
      readonly kind: "number-out-of-range";
      readonly field: string;
      readonly value: number;
      readonly least: number;
      readonly most: number;
      /** What is computed with until it is put right; absent where the thing is left out instead. */
      readonly used?: number;
    })
  | (Placed & {
      readonly kind: "starter-number-out-of-range";
      readonly unit: "mm" | "°";
      readonly value: number;
      readonly least: number;
      readonly most: number;
    })
  | (Placed & { readonly kind: "unknown-reference"; readonly field: string; readonly missingId: string })
  | (Placed & { readonly kind: "duplicate-id"; readonly field: string; readonly id: string })
  | (Placed & { readonly kind: "reference-cycle"; readonly itemIds: readonly string[] })
  | (Placed & { readonly kind: "followed-line-missing"; readonly otherName: string })
  | (Placed & { readonly kind: "reference-moved"; readonly fromNodeId: string; readonly toNodeId: string })
  | (Placed & { readonly kind: "left-of-centre-line"; readonly yMm: number })
  | (Placed & { readonly kind: "opening-names-no-sheet" })
  | (Placed & { readonly kind: "opening-cuts-nothing" })
  | (Placed & { readonly kind: "opening-leaves-nothing" })
  | (Placed & { readonly kind: "opening-not-on-pattern"; readonly otherName: string })
  | (Placed & {
      readonly kind: "web-too-narrow";
      readonly otherName: string;
      readonly webMm: number;
      readonly leastMm: number;
    })
  | (Placed & { readonly kind: "edge-not-for-transition"; readonly otherName: string })
  | (Placed & { readonly kind: "fence-line-closed" })
  | (Placed & { readonly kind: "parallel-does-not-fit"; readonly distanceMm: number })
  | (Placed & { readonly kind: "fence-without-sheet"; readonly fromMm: number; readonly toMm: number })
  | (Placed & { readonly kind: "fence-turns-sharply"; readonly turnRad: number })
  | (Placed & { readonly kind: "fence-has-no-depth"; readonly atMm: number })
  | (Placed & {
      readonly kind: "fence-edge-too-short";
      readonly missingFrontMm: number;
      readonly missingRearMm: number;
    })
  | (Placed & {
      readonly kind: "sheets-do-not-meet";
      readonly otherName: string;
      readonly gapMm: number;
      readonly at: PlanPoint;
    })
  | (Placed & { readonly kind: "transition-has-no-area" })
  | (Placed & { readonly kind: "transition-creased"; readonly angleRad: number; readonly at: PlanPoint })
  | (Placed & {
      readonly kind: "transition-twisted";
      readonly twistRad: number;
      readonly strain: number;
      readonly limit: number;
      readonly leastRadiusMm: number;
      readonly at: PlanPoint;
    })
  | (Placed & {
      readonly kind: "edge-has-three-sheets";
      readonly otherName: string;
      readonly thirdName: string;
      readonly at: PlanPoint;
    })
  | (Placed & {
      readonly kind: "edges-coincide";
      readonly otherName: string;
      readonly edgeIds: readonly [string, string];
      readonly at: PlanPoint;
    })
  | (Placed & {
      readonly kind: "edges-nearly-meet";
      readonly otherName: string;
      readonly gapMm: number;
      readonly at: PlanPoint;
    })
  | (Placed & {
      readonly kind: "sheets-overlap";
      readonly otherName: string;
      readonly overlapMm: number;
      readonly at: PlanPoint;
    })
  | (Placed & {
      readonly kind: "fold-too-sharp";
      readonly otherName: string;
      readonly foldRad: number;
      readonly at: PlanPoint;
    })
  | (Placed & {
      readonly kind: "cut-not-possible";
      readonly cut: "square" | "mitre" | "butt";
      readonly foldRad: number;
    })
  | (Placed & {
      readonly kind: "bend-too-tight";
      readonly radiusMm: number;
      readonly leastRadiusMm: number;
      /** How the pattern is laid for it now; absent where the foam cannot be brought into the bend. */
      readonly laidAs?: "bend cold" | "relief slots" | "planks";
    })
  | (Placed & { readonly kind: "slots-left-open" })
  | (Placed & { readonly kind: "bend-choice-without-bend"; readonly atMm: number })
  | (Placed & { readonly kind: "edge-cannot-be-set-back"; readonly edgeName: string })
  | (Placed & { readonly kind: "no-stock-for-part"; readonly thicknessMm: number })
  /** A cut that the builder put where nothing of the part is. */
  | (Placed & { readonly kind: "own-cut-cuts-nothing"; readonly axis: "u" | "v"; readonly atMm: number })
  /** A strip of which the line to cut by, that far outside, closes over a notch, slot or hole. */
  | (Placed & {
      readonly kind: "cut-line-swallows";
      readonly edgeName: string;
      readonly allowanceMm: number;
    })
  /** Plies that are thicker or thinner than the skin that the geometry allows for; the name is the face's. */
  | (Placed & {
      readonly kind: "laminate-off-allowance";
      readonly thicknessMm: number;
      readonly allowedMm: number;
    })
  /** Colder than the resin bears; the name is the resin's. */
  | (Placed & { readonly kind: "shop-too-cold"; readonly celsius: number; readonly leastCelsius: number })
  /** The air gives off water on what is hardly colder than it; the name is the resin's. */
  | (Placed & {
      readonly kind: "shop-too-damp";
      readonly celsius: number;
      readonly dewPointCelsius: number;
      readonly leastAboveCelsius: number;
    })
  /** A place of the tray that no hand reaches from its edge while it is wet. */
  | (Placed & { readonly kind: "skin-out-of-reach"; readonly farthestMm: number; readonly reachMm: number })
  /** A zone of reinforcement where no part lies on that face. */
  | (Placed & { readonly kind: "zone-off-tray"; readonly face: "lower" | "upper" })
  /** A zone whose plies step in by more than it is wide before the last of them. */
  | (Placed & { readonly kind: "zone-steps-away"; readonly ply: number; readonly stepMm: number })
  /** The resin dissolves the foam; the name is the foam's. */
  | (Placed & {
      readonly kind: "resin-dissolves-foam";
      readonly resinName: string;
      readonly resinKind: string;
    })
  /** A weighed coupon whose share of fibre or uptake no laminate has; the figure is absent where its cloth is unknown. */
  | (Placed & {
      readonly kind: "coupon-not-believable";
      readonly on: "film" | "foam";
      readonly figure?: number;
    })
  /** A closer that gets no spare at its last joint: with it no stock would be large enough. */
  | (Placed & { readonly kind: "no-spare-for-closer"; readonly spareMm: number })
  /** A bend that reaches a free edge, where its foam cannot run past it over a rib. */
  | (Placed & {
      readonly kind: "no-run-past";
      readonly edgeName: string;
      readonly lengthMm: number;
      /** No stock is so large; another part is in the way; the edge runs too far aslant for a rib across; it is a transition. */
      readonly why: "stock" | "part" | "slant" | "transition";
    })
  /** Ribs that are to be bent too far, and cannot be. */
  | (Placed & { readonly kind: "no-over-bend"; readonly why: "cradle" | "fence" | "unlike" | "skin" })
  /** A foam that gives off poison under a hot wire, or of which it is not known; the name is the foam's. */
  | (Placed & { readonly kind: "foam-not-for-hot-wire" })
  | (Placed & {
      readonly kind: "part-does-not-fit-stock";
      readonly stripWidthMm: number;
      readonly stockWidthMm: number;
    })
  /** A layout was accepted for other pieces or other sheets than there are now. */
  | (Placed & { readonly kind: "layout-out-of-date" })
  /** Two pieces on one sheet lie over each other (a gap of 0) or nearer than the blade needs. */
  | (Placed & {
      readonly kind: "pieces-collide";
      readonly otherName: string;
      readonly gapMm: number;
      readonly clearanceMm: number;
    })
  | (Placed & { readonly kind: "piece-off-sheet"; readonly stockName: string })
  | (Placed & { readonly kind: "piece-without-stock"; readonly stockName: string })
  | (Placed & { readonly kind: "rib-under-nothing"; readonly atMm: number })
  | (Placed & {
      readonly kind: "rib-needs-bevel";
      readonly proudMm: number;
      readonly limitMm: number;
      /** What a straight bevel would still stand proud by, where that is over the limit: the foam folds there. */
      readonly foldProudMm?: number;
    })
  | (Placed & { readonly kind: "ribs-overlap"; readonly otherName: string; readonly overlapMm: number })
  /** A typed height of the baseboard that leaves ribs no wood, or fences no room. */
  | (Placed & {
      readonly kind: "baseboard-in-tray";
      readonly attitude: "upright" | "inverted";
      readonly heightMm: number;
      readonly limitMm: number;
      readonly usedMm: number;
    })
  /** A fence runs along in a rib: it carries the sheet there, and the rib is left out. */
  | (Placed & { readonly kind: "rib-in-fence"; readonly otherName: string })
  | (Placed & { readonly kind: "rib-hole-does-not-fit"; readonly holeMm: number })
  /** A rib that is longer than its board, with no place for a splice between its notches. */
  | (Placed & { readonly kind: "rib-not-spliced"; readonly lengthMm: number; readonly longestMm: number })
  | (Placed & { readonly kind: "rib-higher-than-board"; readonly heightMm: number; readonly widthMm: number })
  | (Placed & { readonly kind: "rib-locked-out"; readonly otherName: string })
  /** A part reaches under the wood of a rib, and the shell does not lift off straight up. */
  | (Placed & {
      readonly kind: "shell-locked";
      /** What reaches under the wood; a wing does once its plate is on. */
      readonly by: "fence" | "wing" | "sheet";
      readonly ribName: string;
      readonly stand: "jig" | "cradle";
      readonly overMm: number;
      readonly at: PlanPoint;
      /** Where along the rib wood is in the way, and how high above the board it may stand there. */
      readonly runs: "across" | "along";
      readonly alongMm: readonly [fromMm: number, toMm: number];
      readonly openToMm: number;
    })
  /** Foam that would lie farther off the drawn shape than the form tolerance when the skin sets on it. */
  | (Placed & {
      readonly kind: "foam-off-shape";
      readonly errorMm: number;
      readonly toleranceMm: number;
      readonly at: PlanPoint;
      readonly ribIds: readonly string[];
      readonly by: "bend" | "sag";
    })
  | (Placed & { readonly kind: "strip-not-held"; readonly stripId: string })
  /** What holds a bent piece in its glue-up step gives less than its bend asks at a rib, or at each end of the bend. */
  | (Placed & {
      readonly kind: "bend-not-held";
      readonly stripId: string;
      readonly momentNmm: number;
      readonly by: "ribs" | "weights" | "joints";
      readonly forceN: number;
      readonly heldN: number;
    })
  /** Hand and brush no longer reach a joint when its turn comes: pieces lie over it, or fences stand on both sides of it. */
  | (Placed & {
      readonly kind: "joint-out-of-reach";
      readonly by: "over it" | "beside it";
      readonly closerIds: readonly string[];
      readonly lengthMm: number;
    })
  /** Colder than the glue bears; the name is the glue's. */
  | (Placed & { readonly kind: "glue-too-cold"; readonly celsius: number; readonly leastCelsius: number })
  /** A wish for the order of gluing is for something that is not there; the name is its id. */
  | (Placed & { readonly kind: "order-names-nothing" })
  /** A wish for the order of gluing asks for the opposite of those before it; the name is the sheet's. */
  | (Placed & { readonly kind: "order-contradicts" })
  /** What the builder's order costs: sheets that have to be let in between others, and the later end. */
  | (Placed & {
      readonly kind: "order-wish-costs";
      readonly closerIds: readonly string[];
      readonly hours: number;
    })
  /** A date that no calendar has. */
  | (Placed & { readonly kind: "no-such-date"; readonly field: string; readonly date: string })
  /** Work that is not to be interrupted and longer than any day; the name is the work's. */
  | (Placed & { readonly kind: "work-outlasts-day"; readonly minutes: number; readonly mostMinutes: number })
  /** Hours were written down for work that is no longer to be done; the name is the work's. */
  | (Placed & { readonly kind: "logged-task-gone"; readonly hours: number })
  /** No day of the week has hours, or so few that the work would take years. */
  | (Placed & { readonly kind: "no-working-day" })
  /** Joints of which each alone takes longer than the glue stays open: how many, and the longest; the name is its id. */
  | (Placed & {
      readonly kind: "glue-outlasted";
      readonly count: number;
      readonly minutes: number;
      readonly openMinutes: number;
      readonly celsius: number;
    })
  /** A fence that is to be cut from a panel and cannot be: it is skinned in place. */
  | (Placed & { readonly kind: "panel-not-possible"; readonly bar: PanelBar })
  /** A panel that came out so much thicker than reckoned that the notches of ribs, cut for the reckoned one, no longer take it. */
  | (Placed & {
      readonly kind: "panel-off-thickness";
      readonly measuredMm: number;
      readonly reckonedMm: number;
      readonly ribIds: readonly string[];
    })
  /** A face of a panel that takes longer than the resin can be worked; the name is the panel's. */
  | (Placed & {
      readonly kind: "panel-outlasts-film";
      readonly minutes: number;
      readonly mostMinutes: number;
    })
  | (Placed & {
      readonly kind: "page-too-small";
      readonly usableWidthMm: number;
      readonly usableHeightMm: number;
    })
  | (Placed & { readonly kind: "wing-edge-missing"; readonly edgeId: string })
  | (Placed & { readonly kind: "wing-edge-not-straight"; readonly edgeId: string })
  | (Placed & { readonly kind: "wing-radius-too-small"; readonly radiusMm: number; readonly leastMm: number })
  | (Placed & {
      readonly kind: "wing-flange-too-short";
      readonly lengthMm: number;
      readonly leastMm: number;
      /** Whether it is long enough to be there at all, only too short for most tools. */
      readonly isMade: boolean;
    })
  | (Placed & { readonly kind: "wing-without-width"; readonly at: "bend" | "free edge" })
  | (Placed & { readonly kind: "wing-relief-does-not-fit" })
  | (Placed & { readonly kind: "wings-collide"; readonly otherName: string; readonly overlapMm: number })
  | (Placed & { readonly kind: "plate-overlaps-itself"; readonly otherName: string })
  | (Placed & { readonly kind: "pin-without-node"; readonly nodeId: string })
  | (Placed & { readonly kind: "nothing-drawn" });

/** Why a fence cannot be cut from a flat panel. */
export type PanelBar =
  | { readonly why: "seat" }
  | { readonly why: "curve"; readonly offMm: number }
  | { readonly why: "cloth" }
  | { readonly why: "stock"; readonly foamMm: number }
  | {
      readonly why: "size";
      readonly lengthMm: number;
      readonly heightMm: number;
      /** What the largest foam sheet leaves of a panel. */
      readonly longestMm: number;
      readonly highestMm: number;
    };

export type ProblemKind = Problem["kind"];
