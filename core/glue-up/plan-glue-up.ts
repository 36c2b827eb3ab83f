import { closerSpareMm, type Seam, type Strip } from "../cutting/index.ts";
import { at, formatMm, type Problem } from "../foundation/index.ts";
import type { BendHold, Jig } from "../jig/index.ts";
import type { Joint } from "../joints/index.ts";
import type { Part } from "../patterns/index.ts";
import { type Gluing, gluingOf, laminateOf, type Project } from "../project/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { bendNeeds } from "./bend-needs.ts";
import { bendProblem, bendWords } from "./bend-words.ts";
import { bundleNames, bundleWords } from "./bundles.ts";
import { closedJoints } from "./closed-joints.ts";
import { type Closing, closingsOf } from "./closings.ts";
import { dryFit } from "./dry-fit.ts";
import { fenceRooms } from "./fence-room.ts";
import { carriedBy, fenceTitle, fenceTurns, pairs } from "./fence-turns.ts";
import { type Bond, bevelsOf, glueBonds } from "./glue-bonds.ts";
import { glueSteps } from "./glue-step.ts";
import { glueTimes } from "./glue-times.ts";
import { type GlueUnit, glueUnits } from "./glue-units.ts";
import { standingBonds } from "./neighbours.ts";
import { orderFences } from "./order-fences.ts";
import { planOrder } from "./plan-order.ts";
import { closedOff, reachProblem, reachWords, tight, whyBefore } from "./say-reach.ts";
import { type FenceMoment, list, whyFence, whyOnBench, whySheet } from "./say-why.ts";
import type { GlueLine, StepDraft } from "./step-draft.ts";
import { turnedLoad, turning } from "./turning.ts";
import type { GlueStep } from "./types.ts";

/** What the glue-up is planned from. */
export interface GlueUpSources {
  readonly sheets: readonly Sheet[];
  readonly parts: readonly Part[];
  readonly strips: readonly Strip[];
  readonly seams: readonly Seam[];
  readonly joints: readonly Joint[];
  readonly jig: Jig;
  /** What each bend wants on the jig; a plan without it holds ribs to be enough. */
  readonly holds?: readonly BendHold[];
}

/** The steps in their order, and where closers are fitted to the measured gap. */
export interface GlueUp {
  readonly steps: readonly GlueStep[];
  readonly closings: readonly Closing[];
  readonly problems: readonly Problem[];
}

const SKIN_CAUTION =
  "Begin only when the lower skin has cured and been abraded; its data sheet gives the hours.";

/**
 * The order of the glue-up: seams on the bench, a dry fit of the whole tray, fences that stand first, sheets from the centre
 * outward with closers last, the other fences, turning over where there is a cradle, and fences that sit on the skin at the
 * very end. Problems: bend-not-held where what holds a bent piece is too weak for its bend, strip-not-held where a piece rests on no ribs and no neighbour (it is planned all the same),
 * glue-outlasted where one joint takes longer than its glue stays open, glue-too-cold where no plan is made.
 */
export function planGlueUp(sources: GlueUpSources, project: Project): GlueUp {
  const gluing = gluingOf(project);
  const units = glueUnits({ ...sources, mostCarriedMm: gluing.mostCarriedMm });
  const bonds = closedJoints(glueBonds(units, sources.joints, sources.seams), units, {
    sheets: sources.sheets,
    attitude: project.jig.attitude,
    reachMm: laminateOf(project).reachMm,
  });
  const rooms = fenceRooms(units, sources.sheets);
  const drafts: StepDraft[] = units.filter(({ benchSeams }) => benchSeams.length > 0).map(benchDraft);
  const standing: GlueUnit[] = [];
  const closings: Closing[] = [];
  const problems: Problem[] = [];
  const { loadHours } = glueTimes(gluing.glue, gluing.shopCelsius);
  const add = (
    come: readonly GlueUnit[],
    draft: Pick<StepDraft, "kind" | "title" | "why" | "how" | "cautions">,
    free = false,
  ) => {
    problems.push(...(free ? [] : come.flatMap((unit) => notHeld(unit, come, standing, bonds))));
    const lines = linesOf(come, standing, bonds);
    const needs = bendNeeds(come, standing, lines, { holds: sources.holds ?? [], project, gluing });
    problems.push(...needs.flatMap(bendProblem));
    const shut = free
      ? []
      : [...closedOff(lines, bonds, [...standing, ...come]), ...tight(come, standing, rooms)];
    problems.push(...shut.map(reachProblem));
    const hours = lines.length > 0 ? loadHours : undefined;
    const how = [
      ...(draft.how ?? []),
      ...needs.map((need) => bendWords(need, hours)),
      ...shut.map(reachWords),
    ];
    drafts.push({ place: "jig", ...draft, come, standing: [...standing], lines, how });
    standing.push(...come);
  };

  if (units.length > 1) drafts.push(dryFit(units, gluing));
  const fences = fenceTurns(units, sources.sheets, project);
  const addFences = (moment: FenceMoment) => {
    const sets = pairs(fences.filter((fence) => fence.moment === moment).map(({ unit }) => unit));
    const isFree = moment === "stands first";
    const order = isFree ? sets : orderFences(sets, standing, rooms);
    for (const come of order) {
      const carries = carriedBy(come, bonds);
      const cautions = moment === "on skin" ? [SKIN_CAUTION] : [];
      const kind = moment === "on skin" ? "fence on skin" : "fence";
      const draft = {
        kind,
        title: fenceTitle(moment, come),
        why: `${whyFence(moment, carries)}${isFree ? "" : whyBefore(come, standing, order.flat(), rooms)}`,
        cautions,
      } as const;
      add(come, draft, isFree);
    }
  };

  addFences("stands first");
  const sheetUnits = units.filter(({ part }) => part.kind !== "fence");
  const order = planOrder(sheetUnits, bonds, project, gluing);
  problems.push(...order.problems);
  for (const placement of order.placements) {
    const names = list(bundleNames(placement.units, sources.strips));
    const title = placement.role === "closer" ? `Close the gap with ${names}` : `Lay ${names} on the jig`;
    const sheetsStanding = standing.filter(({ part }) => part.kind !== "fence");
    const fitted = closingsOf(placement, sheetsStanding, bonds);
    closings.push(...fitted);
    add(placement.units, {
      kind: placement.role === "closer" ? "close" : "lay",
      title,
      why: whySheet(placement, sheetsStanding, bonds),
      how: bundleWords(placement, bonds),
      cautions: fitWords(fitted, project),
    });
  }
  addFences("on top");
  if (sources.jig.cradle !== undefined && standing.length > 0) {
    const parts = [...new Set(standing.map(({ part }) => part))];
    const [least, most] = sources.jig.baseboard.corners;
    const load = turnedLoad(parts, Math.abs(most.x - least.x), project);
    add([], { kind: "turn", ...turning(load, project) });
  }
  addFences("after turning");
  addFences("on skin");
  const cold = tooCold(drafts, gluing);
  if (cold.length > 0) return { steps: [], closings, problems: [...problems, ...cold] };
  const steps = glueSteps(drafts, project, gluing);
  return { steps, closings, problems: [...problems, ...outlasted(steps, gluing)] };
}

/** How a closer is fitted, said once for all that come together. */
function fitWords(closings: readonly Closing[], project: Project): readonly string[] {
  const spareMm = closerSpareMm(project);
  const [first] = closings;
  if (first === undefined || spareMm === 0) return [];
  const edges = list(closings.map(({ meetsPartId }) => meetsPartId));
  return [
    `Cut ${closings.length > 1 ? "each" : "it"} ${formatMm(spareMm)} mm large where it meets ${edges}. Lay it in dry with its other joints tight, mark the gap on it, and cut it to that mark.`,
  ];
}

/** Nothing is glued where it is too cold for the glue. */
function tooCold(drafts: readonly StepDraft[], { glue, leastCelsius, shopCelsius }: Gluing): Problem[] {
  if (glue === undefined || shopCelsius >= leastCelsius) return [];
  if (drafts.every(({ lines }) => lines.length === 0)) return [];
  const place = { setting: "laminate.shopCelsius" };
  return [{ kind: "glue-too-cold", place, name: glue.name, celsius: shopCelsius, leastCelsius }];
}

/** Joints that alone take longer than their glue stays open: one problem that names the longest. */
function outlasted(steps: readonly GlueStep[], { glue, shopCelsius }: Gluing): Problem[] {
  const goes = steps.flatMap(({ rounds, openMinutes }) =>
    rounds.filter(({ wetMinutes }) => wetMinutes > openMinutes + 1e-9).map((go) => ({ ...go, openMinutes })),
  );
  const [worst] = goes.toSorted((a, b) => b.wetMinutes - a.wetMinutes);
  if (glue === undefined || worst === undefined) return [];
  const { wetMinutes: minutes, openMinutes, joins } = worst;
  const place = { setting: `materials.glues.${glue.id}.openMinutes` };
  const [name = ""] = joins;
  return [
    { kind: "glue-outlasted", place, name, count: goes.length, minutes, openMinutes, celsius: shopCelsius },
  ];
}

function benchDraft(unit: GlueUnit): StepDraft {
  return {
    kind: "bench",
    place: "bench",
    title: `Glue ${unit.id} from ${list(unit.strips.map(({ id }) => id))}`,
    come: [unit],
    standing: [],
    why: whyOnBench(unit),
    lines: unit.benchSeams.map((seam) => ({
      id: seam.id,
      lengthMm: seam.lengthMm,
      parts: [unit.part],
      units: [unit],
      curvedMm: 0,
      bevelRad: bevelsOf(seam),
      scarfMm: seam.scarfMm,
    })),
  };
}

/** The joints and seams that the arrivals make with what stands and with each other. */
function linesOf(
  come: readonly GlueUnit[],
  standing: readonly GlueUnit[],
  bonds: readonly Bond[],
): GlueLine[] {
  const there = [...standing, ...come];
  const isMade = (bond: Bond, present: readonly GlueUnit[]) =>
    bond.sides.every((side) => side.some((unit) => present.includes(unit)));
  return bonds
    .filter((bond) => isMade(bond, there) && !isMade(bond, standing))
    .map(({ id, lengthMm, sides, curvedMm, bevelRad, scarfMm }) => {
      const units = [...new Set(sides.flat())].filter((unit) => there.includes(unit));
      const parts = [...new Set(sides.flat().map(({ part }) => part))];
      return { id, lengthMm, parts, units, curvedMm, bevelRad, scarfMm };
    });
}

/** A piece that neither ribs nor what stands holds, nor a piece that comes with it, is glued to it and is held. */
function notHeld(
  unit: GlueUnit,
  come: readonly GlueUnit[],
  standing: readonly GlueUnit[],
  bonds: readonly Bond[],
): Problem[] {
  const isHeld = (one: GlueUnit) => one.ribIds.length > 0 || standingBonds(one, standing, bonds).length > 0;
  const isHinged = standingBonds(unit, come, bonds).length > 0 && come.some(isHeld);
  if (isHeld(unit) || isHinged) return [];
  const { part } = unit;
  const place = { itemId: part.itemId, partId: part.id };
  return [{ kind: "strip-not-held", place, name: part.name, stripId: at(unit.adds, 0) }];
}
