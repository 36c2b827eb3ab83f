import { assertNever } from "./assert.ts";
import { formatAngle, formatMm, formatNumber, roundTo } from "./format.ts";
import type { Problem, ProblemLevel } from "./problems.ts";
import { nodeLabel, sayEdge, sayNode } from "./say-node.ts";
import { wordPanelBar } from "./word-panel.ts";

/** A problem in plain words: what is wrong, where, and what to do. The only place where problems get words. */
export const wordProblem = (problem: Problem): string => capital(sentenceFor(problem));

function sentenceFor(problem: Problem): string {
  const { name } = problem;
  switch (problem.kind) {
    case "outline-open":
      return `The outline of ${name} is open by ${formatMm(problem.gapMm)} mm. Close it on its first node.`;
    case "too-few-nodes":
      return `${name} has ${problem.count} nodes and needs ${problem.needed}. Add nodes or delete it.`;
    case "too-many-nodes":
      return `${name} has ${problem.count} nodes; the most is ${problem.most}. Draw it with fewer nodes and curves.`;
    case "too-many-corners":
      return `${name} has ${problem.count} sharp corners, each of which would divide the sheet; the most is ${problem.most}. Draw it with curves or give its nodes a radius.`;
    case "zero-length-segment":
      return `Nodes ${nodeLabel(problem.nodeIds[0])} and ${nodeLabel(problem.nodeIds[1])} of ${name} lie on one spot. Delete one of them.`;
    case "radius-does-not-fit":
      return `The radius of ${formatMm(problem.radiusMm)} mm at ${sayNode(problem.place.nodeId ?? "")} of ${name} does not fit; the largest that does is ${formatMm(problem.largestMm)} mm.`;
    case "radius-needs-lines":
      return `${sayNode(problem.place.nodeId ?? "")} of ${name} has a radius beside a curve. A radius goes between two straight lines; take it off or make both sides straight.`;
    case "line-crosses-itself":
      return `In ${name}, ${wordCrossing(problem.edgeIds)} near x ${formatMm(problem.at.x)}, y ${formatMm(problem.at.y)}. Move a node so that nothing crosses.`;
    case "profile-falls-back":
      return `${name} ${wordFallback(problem.fallbackMm)} x ${formatMm(problem.atXMm)}. A profile goes rearward only; move the node beside it.`;
    case "profile-too-short":
      return `${problem.profileName} does not cover ${name}: it is short by ${wordShort(problem)}. Lengthen the profile or shorten the outline.`;
    case "offset-exceeds-radius":
      return `Near x ${formatMm(problem.atXMm)} ${name} bends to a radius of ${formatMm(problem.radiusMm)} mm, but its foam and skins need ${formatMm(problem.offsetMm)} mm there. Make the bend wider or the foam thinner.`;
    case "number-out-of-range":
      return `${problem.field} of ${name} is ${formatTyped(problem.value)}. It must lie between ${formatTyped(problem.least)} and ${formatTyped(problem.most)}.${wordUsed(problem.used)}`;
    case "starter-number-out-of-range":
      return `${name} is ${formatTyped(problem.value)}. Type a number from ${formatTyped(problem.least)} to ${formatTyped(problem.most)}${problem.unit === "°" ? "°" : " mm"}.`;
    case "unknown-reference":
      return `${name} names ${problem.missingId} as its ${problem.field}, and there is no such thing. Choose another.`;
    case "duplicate-id":
      return `${name} has the ${problem.field} ${problem.id}, which something before it has already. It is left out until it gets another.`;
    case "reference-cycle":
      return `${name} follows an edge that follows ${name} again. Give one of them nodes of its own.`;
    case "followed-line-missing":
      return `${name} follows an edge of ${problem.otherName}, which cannot be made yet. Put ${problem.otherName} right first.`;
    case "reference-moved":
      return `An edge that ${name} follows has lost an end; it now runs from ${sayNode(problem.fromNodeId)} to ${sayNode(problem.toNodeId)}. Check that this is what you want.`;
    case "left-of-centre-line":
      return `${sayNode(problem.place.nodeId ?? "")} of ${name} lies ${formatMm(-problem.yMm)} mm left of the centre line. With mirroring on, draw the right half only.`;
    case "opening-names-no-sheet":
      return `${name} is to be cut square to a sheet, and names none. Choose the sheet, or cut it upright.`;
    case "opening-cuts-nothing":
      return `${name} lies over no sheet and cuts nothing. Move it over the sheet that it is for, or delete it.`;
    case "opening-leaves-nothing":
      return `Openings take away the whole of ${name}. Make them smaller, or delete ${name}.`;
    case "opening-not-on-pattern":
      return `${name} lies over ${problem.otherName}, whose pattern does not show it. Cut it there plumb through the sheet once that is glued in.`;
    case "web-too-narrow":
      return `${name} leaves only ${formatMm(problem.webMm)} mm of foam to ${problem.otherName}, less than the ${formatMm(problem.leastMm)} mm to keep. Move it, make it smaller, or put in a hard insert there.`;
    case "edge-not-for-transition":
      return `${name} cannot begin at ${problem.otherName}: a transition runs between edges of sections, transitions and plates. Choose another edge.`;
    case "parallel-does-not-fit":
      return `A parallel ${formatMm(problem.distanceMm)} mm beside ${name} has no room at ${sayNode(problem.place.nodeId ?? "")}. Take a smaller distance, or take that node out first.`;
    case "fence-line-closed":
      return `The line of ${name} closes on itself. A fence has two ends; delete the node where it should end.`;
    case "fence-without-sheet":
      return `${name} has no sheet above it from ${formatMm(problem.fromMm)} to ${formatMm(problem.toMm)} mm along its line. Shorten the fence or draw a sheet over it.`;
    case "fence-turns-sharply":
      return `${name} turns by ${formatAngle(problem.turnRad)} in one place, and a sheet of foam cannot. Give that node a radius, make it a curve, or end the fence there and draw another.`;
    case "fence-has-no-depth":
      return `The lower edge of ${name} is above the sheet at ${formatMm(problem.atMm)} mm along its line. Lower it there or end the fence earlier.`;
    case "fence-edge-too-short":
      return `The lower edge of ${name} is short by ${wordShort(problem)}. Lengthen it in the side view.`;
    case "sheets-do-not-meet":
      return `${name} and ${problem.otherName} share an edge but miss each other by ${formatMm(problem.gapMm)} mm near x ${formatMm(problem.at.x)}, y ${formatMm(problem.at.y)}. Bring their heights together or end the shared edge there.`;
    case "transition-has-no-area":
      return `The edges of ${name} lie on each other and leave no sheet between them. Choose another edge or move one of them.`;
    case "transition-creased":
      return `${name} has a crease of ${formatAngle(problem.angleRad)} near x ${formatMm(problem.at.x)}: no bent sheet joins its edges there. Round the corner of the edge, ease a free edge, or divide the transition there.`;
    case "transition-twisted":
      return `${name} needs ${formatNumber(problem.strain * 100, 2)} % strain of its foam near x ${formatMm(problem.at.x)}, with ${formatAngle(problem.twistRad)} of twist at most and a least radius of ${formatMm(problem.leastRadiusMm)} mm; the foam takes ${formatNumber(problem.limit * 100, 2)} %. Choose its rulings for the least strain, ease a free edge, make the foam thinner, or choose another foam.`;
    case "edge-has-three-sheets":
      return `${name}, ${problem.otherName} and ${problem.thirdName} meet in one edge near x ${formatMm(problem.at.x)}. It is cut as the joint of the first two; fit the third to them by hand, or end one of them before the edge.`;
    case "edges-coincide":
      return `An edge of ${name} and one of ${problem.otherName} lie on each other near x ${formatMm(problem.at.x)}, y ${formatMm(problem.at.y)}, and are not joined. Join them, or move them apart.`;
    case "edges-nearly-meet":
      return `${name} and ${problem.otherName} run beside each other with a gap of ${formatMm(problem.gapMm)} mm near x ${formatMm(problem.at.x)}, y ${formatMm(problem.at.y)}. Let one edge follow the other, or move them apart.`;
    case "sheets-overlap":
      return `${name} lies ${formatMm(problem.overlapMm)} mm inside ${problem.otherName} near x ${formatMm(problem.at.x)}, y ${formatMm(problem.at.y)}. Move an edge, or let one follow the other.`;
    case "fold-too-sharp":
      return `${name} and ${problem.otherName} fold by ${formatAngle(Math.abs(problem.foldRad))} near x ${formatMm(problem.at.x)}, y ${formatMm(problem.at.y)}: they lie nearly on each other, and no joint can be cut. Move an edge, or turn the sheet's core to its other side.`;
    case "cut-not-possible":
      return `The joint of ${name} folds by ${formatAngle(problem.foldRad)} and cannot be cut as a ${problem.cut}: a bevel would be over 60°. It is cut as its fold asks; choose another cut.`;
    case "bend-too-tight":
      return `${name} bends to ${formatMm(problem.radiusMm)} mm; this foam bends cold to ${formatMm(problem.leastRadiusMm)} mm. ${wordLaidAs(problem.laidAs)}ake the bend wider, the foam thinner, or choose another foam.`;
    case "slots-left-open":
      return `Relief slots of ${name} are to be left open. Open slots carry no shear, so the sheet has no strength there: glue them when it is bent, and wipe them flush.`;
    case "bend-choice-without-bend":
      return `For ${name} a way to bend is chosen at ${formatMm(problem.atMm)} mm, and there is no bend any more. Choose it anew under Sheets where the bend is now.`;
    case "edge-cannot-be-set-back":
      return `${problem.edgeName} of ${name} cannot be set back for its joint or its insert: a curve in it is tighter than that, or the edges beside it are too short. Open the curve, lengthen the edges, or choose another finish.`;
    case "own-cut-cuts-nothing":
      return `Your cut of ${name} at ${problem.axis} ${formatMm(problem.atMm)} mm lies outside it and divides nothing. Move it or take it back.`;
    case "cut-line-swallows":
      return `${problem.edgeName} of ${name} is narrower than twice the ${formatMm(problem.allowanceMm)} mm that the line to cut by lies outside: nothing is cut there. Allow less for kerf or trim, or cut it after with a knife, by the finished line.`;
    case "laminate-off-allowance":
      return `The plies of the ${name} come to ${formatMm(problem.thicknessMm)} mm; the drawing allows ${formatMm(problem.allowedMm)} mm there. Change the plies under Skin, or the allowance under Stock: the foam moves with it.`;
    case "shop-too-cold":
      return `${name} is not to be laid at ${formatNumber(problem.celsius, 0)} °C: under ${formatNumber(problem.leastCelsius, 0)} °C it may never cure. Warm the shop, or take a resin for the cold, by its data sheet.`;
    case "shop-too-damp":
      return `At ${formatNumber(problem.celsius, 0)} °C the air of the shop gives off water at ${formatNumber(problem.dewPointCelsius, 1)} °C: the surface has to be ${formatNumber(problem.leastAboveCelsius, 0)} °C above that. Dry the air or warm shop and foam before ${name} is opened, or it cures cloudy and nothing bonds to it.`;
    case "skin-out-of-reach":
      return `${name} lies ${formatMm(problem.farthestMm)} mm from its edge, and hands reach in by ${formatMm(problem.reachMm)} mm. Lay a padded plank across from rib to rib and work from that, with a second pair of hands; then type how far you reach under Skin.`;
    case "zone-off-tray":
      return `${name} lies where the ${problem.face} face of no part is: it is left out. Move it, or give it the other face, under Skin.`;
    case "zone-steps-away":
      return `${name} steps in by ${formatMm(problem.stepMm)} mm a ply and has nothing left at ply ${problem.ply}: that and what follows is left out. Make the zone larger, or the step or the number of plies smaller.`;
    case "resin-dissolves-foam":
      return `${problem.resinName} is a ${problem.resinKind} resin: its styrene dissolves ${name}. No session is planned. Take an epoxy, or a foam that its maker allows for it.`;
    case "coupon-not-believable":
      return `${name} ${wordCoupon(problem.on, problem.figure)} Weigh it again, with the peel ply off, and check its size and plies; until then its figures are not used.`;
    case "no-spare-for-closer":
      return `${name} closes a gap and should be cut ${formatMm(problem.spareMm)} mm large at its last joint, but then it fits no stock sheet. It is drawn at its size: measure the gap before you cut it, or divide it under Sheets.`;
    case "no-run-past":
      return `The bend of ${name} reaches its ${problem.edgeName}, and its foam should run ${formatMm(problem.lengthMm)} mm past it over a rib, to be held there; ${NO_RUN_PAST_WORDS[problem.why]} ${problem.why === "transition" ? "Else the end lies as it likes." : "As it is the end is held by nothing."}`;
    case "no-over-bend":
      return `The ribs are not over-bent, though it is asked for under Jig: ${NO_OVER_BEND_WORDS[problem.why]}`;
    case "foam-not-for-hot-wire":
      return `${name} is not to be cut with a hot wire: only polystyrene is, and the fumes of other foams poison. Choose knife, saw or router under Stock, or foam that may be.`;
    case "no-stock-for-part":
      return `${name} is ${formatMm(problem.thicknessMm)} mm thick and no stock sheet has that thickness and foam. Add one under Stock.`;
    case "layout-out-of-date":
      return `The layout of ${name} was accepted for other pieces or other sheets than there are now. Lay it out again.`;
    case "pieces-collide":
      return problem.gapMm > 0
        ? `${name} and ${problem.otherName} lie ${formatMm(problem.gapMm)} mm apart on their sheet; the blade needs ${formatMm(problem.clearanceMm)} mm. Move one of them.`
        : `${name} and ${problem.otherName} lie over each other on their sheet. Move one of them.`;
    case "piece-off-sheet":
      return `${name} lies over the edge of its sheet of ${problem.stockName}. Move it back.`;
    case "piece-without-stock":
      return `${name} has no place on the sheets of ${problem.stockName}. Add a sheet that is large enough, and lay out again.`;
    case "part-does-not-fit-stock":
      return `A strip of ${name} is ${formatMm(problem.stripWidthMm)} mm wide and the stock ${formatMm(problem.stockWidthMm)} mm. Choose larger stock.`;
    case "rib-under-nothing":
      return `The rib at ${formatMm(problem.atMm)} mm has no sheet on it. Move it or delete it.`;
    case "rib-needs-bevel":
      return `${name} cut square would stand ${formatMm(problem.proudMm)} mm proud of the foam; the limit is ${formatMm(problem.limitMm)} mm. ${wordBevel(problem.foldProudMm)}`;
    case "ribs-overlap":
      return `${name} stands inside ${problem.otherName}: their boards overlap by ${formatMm(problem.overlapMm)} mm of their thickness. Move one of them or leave it out.`;
    case "baseboard-in-tray":
      return wordBoardInTray(problem);
    case "rib-in-fence":
      return `${name} stands in the line of ${problem.otherName}, which carries the sheet there itself. It is left out; take it out of the list or move it.`;
    case "rib-hole-does-not-fit":
      return `A hole of ${formatMm(problem.holeMm)} mm finds no room in ${name}: 25 mm of wood stay around it, clear of slots and notches. They are made without; take a smaller hole.`;
    case "rib-not-spliced":
      return `${name} is ${formatMm(problem.lengthMm)} mm long, its board gives ${formatMm(problem.longestMm)} mm, and no place between its notches and slots is free for a splice. Take a longer board, or move a rib that crosses it.`;
    case "rib-higher-than-board":
      return `${name} is ${formatMm(problem.heightMm)} mm high, more than the ${formatMm(problem.widthMm)} mm that its board gives. Lower the jig, or take a wider board.`;
    case "rib-locked-out":
      return `${name} cannot come down over ${problem.otherName}. Move one of them.`;
    case "shell-locked":
      return wordLocked(problem);
    case "foam-off-shape":
      return wordOffShape(problem);
    case "strip-not-held":
      return `${problem.stripId} rests on no rib and on no neighbour when its turn comes. Add a rib under it.`;
    case "joint-out-of-reach":
      return `${name} is out of reach of hand and brush when its turn comes: ${problem.closerIds.join(" and ")} ${problem.closerIds.length > 1 ? "are" : "is"} ${problem.by} for ${formatMm(problem.lengthMm)} mm, and no order was found that leaves a way. Draw them farther apart or lower, or cut an opening to reach through.`;
    case "bend-not-held":
      return `${problem.stripId} is not held enough for its bend when its turn comes: that pushes back with ${formatNumber(problem.momentNmm / 1000, 1)} N m, and ${HELD_BY[problem.by]} give ${formatNumber(Math.floor(problem.heldN), 0)} of ${formatNumber(Math.ceil(problem.forceN), 0)} N. Clamp a batten over it or lay weights there until the joints bear load, ${problem.by === "ribs" ? "take straps or screws" : "set three ribs under it, type what a pin of yours holds"}, or bend it with slots.`;
    case "glue-too-cold":
      return `${name} is not to be used at ${formatNumber(problem.celsius, 0)} °C: under ${formatNumber(problem.leastCelsius, 0)} °C it may never set. Warm the shop, or take a glue for the cold, by its data sheet. Until then there is no plan of the gluing.`;
    case "order-names-nothing":
      return `Your order of gluing names ${name}, and no sheet of that name is laid on the jig. Take that wish back under Glue.`;
    case "order-contradicts":
      return `What you ask of ${name} in the order of gluing is the opposite of what you ask before. It is left out; take one of the two back under Glue.`;
    case "order-wish-costs":
      return `${wordOrderCost(problem)} Take a wish back under Glue, or leave it so.`;
    case "no-such-date":
      return `${problem.date} is typed as a ${problem.field} of ${name}, and there is no such date. Type another, as 2026-11-25.`;
    case "work-outlasts-day":
      return `${name} takes ${formatNumber(problem.minutes, 0)} min without a break, and no day of your week has more than ${formatNumber(problem.mostMinutes, 0)} min. Give a day more hours under Glue, or call in more hands. The calendar goes past the end of a day there.`;
    case "logged-task-gone":
      return `${formatNumber(problem.hours, 1)} h are written down for “${name}”, and there is no such work any more. They count for nothing until you take them out under Glue, Hours, and write them to the work that took its place.`;
    case "no-working-day":
      return "There is no calendar: the days of your week have no hours, or so few that the work would take years. Type the hours of each weekday under Glue.";
    case "glue-outlasted":
      return `The joint ${name} takes ${formatNumber(problem.minutes, 0)} min to spread, shut and hold${problem.count > 1 ? `, and ${problem.count - 1} more take too long` : ""}: the glue stays open for ${formatNumber(problem.openMinutes, 0)} min at ${formatNumber(problem.celsius, 0)} °C. Call in more hands, glue in a cooler shop, take a slower glue, or divide the sheet.`;
    case "panel-not-possible":
      return `${name} cannot be cut from a panel, and is skinned in place. ${wordPanelBar(problem.bar)}`;
    case "panel-off-thickness":
      return `The panel for ${name} measures ${formatMm(problem.measuredMm)} mm and was reckoned at ${formatMm(problem.reckonedMm)} mm. Notches that were cut before no longer take it: open them in ${problem.ribIds.join(", ")} as the ribs are drawn now.`;
    case "panel-outlasts-film":
      return `A face of ${name} takes ${formatNumber(problem.minutes, 0)} min, and the resin can be worked for ${formatNumber(problem.mostMinutes, 0)} min. Call in more hands, take a slower resin or a cooler shop, or split the longest fence.`;
    case "page-too-small":
      return `The paper leaves ${formatMm(problem.usableWidthMm)} by ${formatMm(problem.usableHeightMm)} mm inside its margins, too little for the 200 mm bar. Choose larger paper or smaller margins.`;
    case "wing-edge-missing":
      return `${name} is to be bent along ${sayEdge(problem.edgeId)}, and the base has no such free edge. Choose another.`;
    case "wing-edge-not-straight":
      return `${name} is to be bent along ${sayEdge(problem.edgeId)}, which is not one straight line. Metal bends along straight lines only; draw that edge straight or choose another.`;
    case "wing-radius-too-small":
      return `${name} is bent to an inside radius of ${formatMm(problem.radiusMm)} mm; this metal takes ${formatMm(problem.leastMm)} mm before it cracks. Make the radius larger or choose a softer metal.`;
    case "wing-flange-too-short":
      return `${name} is ${formatMm(problem.lengthMm)} mm long; a tool needs ${formatMm(problem.leastMm)} mm to hold it and bend it. Make it longer${problem.isMade ? "" : "; until then it is left out"}.`;
    case "wing-without-width":
      return `${name} has no width left at its ${problem.at}. Make its insets or tapers smaller.`;
    case "wing-relief-does-not-fit":
      return `${name} ends where the edge beside it is too short for the cut that frees its bend. Lengthen that edge, or let the wing end earlier.`;
    case "wings-collide":
      return `Folded, ${name} stands ${formatMm(problem.overlapMm)} mm inside ${problem.otherName}. Shorten one, taper it, or bend it less; until then it is left out.`;
    case "plate-overlaps-itself":
      return `Laid flat, ${name} lies over ${problem.otherName}, so one sheet cannot give both. Shorten it or taper its end; until then it is left out.`;
    case "pin-without-node":
      return `${name} is pinned to ${sayNode(problem.nodeId)} of something that is not there, and is not shown. Pin it to a place or delete it.`;
    case "nothing-drawn":
      return "Nothing is drawn yet. Draw a section in the plan to begin.";
    default:
      return assertNever(problem);
  }
}

/** What holds a bent piece on the jig. */
const HELD_BY = {
  ribs: "the hold-downs that find room on its ribs",
  weights: "the weights that find room on it",
  joints: "the pins of its joints",
} as const;

/** How a bend that is too tight for cold foam is laid now, and what the builder can say to it. */
function wordLaidAs(laidAs: "bend cold" | "relief slots" | "planks" | undefined): string {
  switch (laidAs) {
    case "relief slots":
      return "It is laid with relief slots; say under Sheets that you want them, or choose planks there. Or m";
    case "planks":
      return "It is laid in planks; say under Sheets that you want them. Or m";
    case "bend cold":
      return "You chose to bend it cold: try it on scrap first. Or m";
    case undefined:
      return "Neither slots nor planks bring it into that bend. M";
  }
}

/** Where foam would lie off its shape, why, and what helps. */
function wordOffShape(problem: Extract<Problem, { readonly kind: "foam-off-shape" }>): string {
  const { name, errorMm, toleranceMm, at, ribIds, by } = problem;
  const [one, other] = ribIds;
  const where = other === undefined ? `beyond rib ${one ?? ""}` : `between ribs ${one ?? ""} and ${other}`;
  const why = by === "bend" ? "it would rather stay straight" : "it sags";
  return `${name} would lie ${formatMm(Math.abs(errorMm))} mm ${errorMm > 0 ? "above" : "below"} the drawn shape on the jig ${where}, at x ${formatMm(at.x)} y ${formatMm(at.y)}, because ${why}; the form tolerance is ${formatMm(toleranceMm)} mm. Set ribs closer there, or let them be placed automatically.`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How much is missing at the ends, where something is. */
function wordShort(missing: { readonly missingFrontMm: number; readonly missingRearMm: number }): string {
  const front = `${formatMm(missing.missingFrontMm)} mm at the front`;
  const rear = `${formatMm(missing.missingRearMm)} mm at the rear`;
  if (missing.missingRearMm < LEAST_SAID_MM) return front;
  return missing.missingFrontMm < LEAST_SAID_MM ? rear : `${front} and ${rear}`;
}

/** Less than this is written as nothing. */
const LEAST_SAID_MM = 0.05;

/** Two edges that cross, or one that crosses itself. */
function wordCrossing([one, other]: readonly [string, string]): string {
  return one === other ? `${sayEdge(one)} crosses itself` : `${sayEdge(one)} and ${sayEdge(other)} cross`;
}

/** A number as somebody typed it: no more decimals than it has, three at most. */
function formatTyped(value: number): string {
  if (Number.isNaN(value)) return "not a number";
  if (Math.abs(value) >= 1e7) return value < 0 ? "far below zero" : "far too large";
  const decimals = [0, 1, 2].find((count) => Math.abs(value - roundTo(value, count)) < 1e-9) ?? 3;
  return formatNumber(value, decimals);
}

/** What the builder's own order of gluing makes harder, and how much longer the jig is at work. */
function wordOrderCost({
  closerIds,
  hours,
}: Extract<Problem, { readonly kind: "order-wish-costs" }>): string {
  const closers = closerIds.join(", ");
  const later = hours >= 1 ? `the gluing takes ${formatNumber(hours, 0)} h longer` : "";
  if (closers === "") return `In your order ${later}.`;
  return `In your order ${closers} must be let in between others and fitted to the measured gap${later === "" ? "" : `, and ${later}`}.`;
}

/** A profile that runs back, or goes straight up or down without running back. */
const wordFallback = (fallbackMm: number): string =>
  fallbackMm < LEAST_RUN_BACK_MM
    ? "has an upright step at"
    : `runs back by ${formatNumber(fallbackMm, 2)} mm near`;

/** Less than this is written as nothing with two decimals. */
const LEAST_RUN_BACK_MM = 0.005;

/** A straight bevel helps on a slope, but not where the foam folds over the board. */
const wordBevel = (foldProudMm: number | undefined): string =>
  foldProudMm === undefined
    ? "Bevel its top as listed."
    : `It stands in a fold, and a bevel would still stand ${formatMm(foldProudMm)} mm proud. Move it, or cut its top square at the lowest height of the foam over it.`;

function wordBoardInTray({
  attitude,
  heightMm,
  limitMm,
  usedMm,
}: Extract<Problem, { kind: "baseboard-in-tray" }>): string {
  const [where, most] =
    attitude === "upright"
      ? ["above the tray, or too near under it or its fences", "or less"]
      : ["in the tray, which hangs upside down under it, or too near", "or more"];
  return `The baseboard at z ${formatMm(heightMm)} lies ${where}: ribs need 20 mm of wood. Type ${formatMm(limitMm)} ${most} under Jig, or let the lowest rib set it. Until then it lies at z ${formatMm(usedMm)}.`;
}

function wordLocked({
  name,
  by,
  overMm,
  ribName,
  stand,
  at,
  runs,
  alongMm: [fromMm, toMm],
  openToMm,
}: Extract<Problem, { kind: "shell-locked" }>): string {
  const where = `${formatMm(overMm)} mm under ${ribName} near x ${formatMm(at.x)}, y ${formatMm(at.y)}`;
  const axis = runs === "across" ? "y" : "x";
  const open = `open ${ribName} from its top between ${axis} ${formatMm(fromMm)} and ${axis} ${formatMm(toMm)}, ${openToMm < SAWN_THROUGH_MM ? "right through" : `down to ${formatMm(openToMm)} mm over the board`}`;
  return by === "wing"
    ? `The wing of ${name} reaches ${where}: with the plate on, the shell does not lift off the ${stand} straight up. Fit the plate after the shell is off, fold the wing the other way, or move the rib.`
    : `${name} reaches ${where}: the shell does not lift off the ${stand} straight up. Move the rib where that helps; else ${open}, or glue ${name} on after the shell is off.`;
}

/** Less wood than this under an opening is none, mm. */
const SAWN_THROUGH_MM = 5;

const NO_RUN_PAST_WORDS = {
  stock: "but then it fits no stock sheet. Divide it under Sheets, or let it run past by less under Jig.",
  part: "but another part is in the way. Let it run past by less under Jig, or set ribs so that one stands at the edge.",
  transition:
    "but it is a transition, whose foam is not cut longer: set a rib across 25 mm inside that edge under Jig, tape the foam down on it, and batten the edge between two boards until the first skin has set.",
  slant: "but the edge runs aslant, and no rib across is past all of it. Let it run past by more under Jig.",
} as const satisfies Record<Extract<Problem, { kind: "no-run-past" }>["why"], string>;

const wordCoupon = (on: "film" | "foam", figure: number | undefined): string => {
  if (figure === undefined || !Number.isFinite(figure)) return "is of no cloth that is in the list.";
  return on === "film"
    ? `gives ${formatNumber(100 * figure, 0)} % of fibre by mass, and hand lay-up gives 20 to 75.`
    : `gives ${formatNumber(1000 * figure, 0)} g/m² that the foam drinks, and foam drinks 0 to 1000.`;
};

const NO_OVER_BEND_WORDS = {
  cradle: "the cradle brings the tray back to the drawn shape for its second skin. Take one of the two.",
  fence:
    "its fences are cut to the drawn shape and would not fit, and they hold the bends themselves. Make a cradle instead.",
  unlike:
    "its sheets do not all bend alike over the ribs, and their edges would no longer meet. Make a cradle instead.",
  skin: "no skin is allowed for on the face that is laminated on the jig, so that all of the bend would come back. Set the skins under Stock.",
} as const satisfies Record<Extract<Problem, { kind: "no-over-bend" }>["why"], string>;

const wordUsed = (used: number | undefined): string =>
  used === undefined ? "" : ` Until then ${formatTyped(used)} is used.`;

/** Whether a problem kept something from being made ("stop") or only wants looking at ("look"). */
export function levelOf(problem: Problem): ProblemLevel {
  switch (problem.kind) {
    case "reference-moved":
    case "opening-cuts-nothing":
    case "opening-not-on-pattern":
    case "web-too-narrow":
    case "own-cut-cuts-nothing":
    case "cut-line-swallows":
    case "no-spare-for-closer":
    case "no-run-past":
    case "no-over-bend":
    case "laminate-off-allowance":
    case "coupon-not-believable":
    case "zone-off-tray":
    case "zone-steps-away":
    case "shop-too-damp":
    case "skin-out-of-reach":
    case "baseboard-in-tray":
    case "rib-needs-bevel":
    case "ribs-overlap":
    case "rib-in-fence":
    case "shell-locked":
    case "rib-hole-does-not-fit":
    case "bend-too-tight":
    case "slots-left-open":
    case "bend-choice-without-bend":
    case "edge-has-three-sheets":
    case "transition-creased":
    case "transition-twisted":
    case "cut-not-possible":
    case "fold-too-sharp":
    case "edges-coincide":
    case "edges-nearly-meet":
    case "sheets-overlap":
    case "sheets-do-not-meet":
    case "layout-out-of-date":
    case "nothing-drawn":
    case "pin-without-node":
    case "foam-off-shape":
    case "strip-not-held":
    case "bend-not-held":
    case "joint-out-of-reach":
    case "glue-outlasted":
    case "panel-not-possible":
    case "panel-off-thickness":
    case "panel-outlasts-film":
    case "no-such-date":
    case "order-names-nothing":
    case "order-contradicts":
    case "order-wish-costs":
    case "work-outlasts-day":
    case "logged-task-gone":
    case "no-working-day":
    case "wing-radius-too-small":
      return "look";
    case "wing-flange-too-short":
      return problem.isMade ? "look" : "stop";
    default:
      return "stop";
  }
}
