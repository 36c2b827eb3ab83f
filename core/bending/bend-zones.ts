import { at, bracketedRoot, FLAT_RADIUS_MM } from "../foundation/index.ts";
import { type BendLine, bendLine, type FibreStretch, fibreOf, type Sheet } from "../surfaces/index.ts";
import { type BendSample, bendSamplesOf } from "./bend-samples.ts";
import { type JudgedSpan, judgeSpan } from "./judge-zone.ts";
import type { Span } from "./stretch-curve.ts";
import type { BendFace, BendZone } from "./types.ts";
import type { BendGround } from "./ways-to-bend.ts";

/** Stretches shorter than this are noise of the sampling and join their neighbour. */
const SHORTEST_ZONE_MM = 0.01;

/** How a sheet is bent, and where the fibre that keeps its length is not the middle of its foam. */
export interface SheetBends {
  readonly zones: readonly BendZone[];
  readonly stretches: readonly FibreStretch[];
}

/**
 * How each stretch of a sheet bends, in flat u from the sheet's first ruling: radius of the middle of the foam and
 * outer-fibre strain t / (2 R) against the least cold-bend radius of the foam (a multiple of its thickness), and where that
 * is too tight, or the builder chose so, by slots or planks. A transition is flat, bent cold, or not made of this foam.
 */
export function bendZones(sheet: Sheet, ground: BendGround): SheetBends {
  const limitMm = ground.leastBendRatio * ground.thicknessMm;
  const sampled = bendSamplesOf(sheet).map((sample) => spanOf(sample, limitMm));
  if (sheet.kind === "transition")
    return { zones: mergeSpans(sampled).map((span) => wholeZone(span, sheet)), stretches: [] };
  const line = bendLine(sheet);
  const spans = mergeSpans(withExactBorders(sampled, line, limitMm));
  const covered = coveredBy(sheet);
  const judged = spans.map((span): JudgedSpan | undefined =>
    span.leastRadiusMm === undefined
      ? undefined
      : judgeSpan(
          line,
          { ...span, leastRadiusMm: span.leastRadiusMm, ...facesOf(sheet, span) },
          covered,
          ground,
        ),
  );
  const stretches = judged.flatMap((one) => one?.stretches ?? []);
  const { flatAt } = fibreOf(sheet, stretches);
  const zones = spans.map((span, i): BendZone => {
    const zone = { ...wholeZone(span, sheet), fromUMm: flatAt(span.fromMm), toUMm: flatAt(span.toMm) };
    const made = judged[i];
    if (!made) return zone;
    const { slots, planks } = made.bend;
    const startUMm = flatAt(made.startMm);
    return {
      ...zone,
      verdict: made.verdict,
      bend: {
        ...made.bend,
        ...(slots && { slots: { ...slots, placesUMm: slots.placesUMm.map((u) => startUMm + u) } }),
        ...(planks && {
          planks: planks.map((plank) => ({
            ...plank,
            fromUMm: startUMm + plank.fromUMm,
            toUMm: startUMm + plank.toUMm,
          })),
        }),
      },
    };
  });
  return { zones, stretches };
}

/** A stretch along the middle of the foam: flat, bent within the foam's limit, or tighter. */
interface BendSpan extends Span {
  readonly isTight: boolean;
  /** Positive where it turns toward the inward normal. */
  readonly sense: number;
  /** Absent where it is flat. */
  readonly leastRadiusMm?: number;
}

function spanOf({ fromMm, toMm, curvaturePerMm }: BendSample, limitMm: number): BendSpan {
  if (Math.abs(curvaturePerMm) * FLAT_RADIUS_MM <= 1) return { fromMm, toMm, isTight: false, sense: 0 };
  const leastRadiusMm = 1 / Math.abs(curvaturePerMm);
  const isTight = leastRadiusMm < limitMm * (1 - 1e-9);
  return { fromMm, toMm, isTight, sense: Math.sign(curvaturePerMm), leastRadiusMm };
}

/**
 * Where a bend passes the foam's limit between two samples, the border stands at the very place: what is laid there must
 * not depend on how a curve is sampled. It lies in the tight one of the two, whose other end is past the limit.
 */
function withExactBorders(spans: readonly BendSpan[], line: BendLine, limitMm: number): readonly BendSpan[] {
  const exact: { -readonly [Key in keyof BendSpan]: BendSpan[Key] }[] = spans.map((span) => ({ ...span }));
  const beyond = (middleMm: number) => Math.abs(line.curvatureAt(middleMm)) * limitMm - 1;
  for (let i = 1; i < exact.length; i++) {
    const [a, b] = [at(exact, i - 1), at(exact, i)];
    if (a.isTight === b.isTight || a.sense !== b.sense) continue;
    const tight = a.isTight ? a : b;
    const [from, to] = [tight.fromMm + INSIDE_MM, tight.toMm - INSIDE_MM];
    if (from >= to || beyond(from) < 0 === beyond(to) < 0) continue;
    const borderMm = bracketedRoot(beyond, from, to);
    a.toMm = borderMm;
    b.fromMm = borderMm;
  }
  return exact;
}

/** Curvature is felt this far inside a sample, on its own piece of the curve. */
const INSIDE_MM = 1e-7;

function mergeSpans(all: readonly BendSpan[]): readonly BendSpan[] {
  const spans: BendSpan[] = [];
  for (const span of all) {
    const last = spans.at(-1);
    const isSame = last && last.isTight === span.isTight && last.sense === span.sense;
    if (last && (isSame || span.toMm - span.fromMm < SHORTEST_ZONE_MM))
      spans[spans.length - 1] = joined(last, span);
    else spans.push(span);
  }
  return spans;
}

function joined(a: BendSpan, b: BendSpan): BendSpan {
  const radiusOf = ({ leastRadiusMm }: BendSpan) => leastRadiusMm ?? Number.POSITIVE_INFINITY;
  const tighter = radiusOf(a) <= radiusOf(b) ? a : b;
  return { ...tighter, isTight: a.isTight, fromMm: a.fromMm, toMm: b.toMm };
}

/** The zone of a stretch that is bent whole. */
function wholeZone(span: BendSpan, sheet: Sheet): BendZone {
  const { fromMm, toMm, isTight, leastRadiusMm } = span;
  const place = { fromUMm: fromMm, toUMm: toMm };
  if (leastRadiusMm === undefined) return { ...place, verdict: "flat", strain: 0 };
  return {
    ...place,
    verdict: isTight ? "not with this foam" : "bend cold",
    leastRadiusMm,
    inside: facesOf(sheet, span).inside,
    strain: sheet.thicknessMm / (2 * leastRadiusMm),
  };
}

/** Turning toward the inward normal leaves the upper face inside; a fence turning left has its left face inside. */
function facesOf(
  sheet: Sheet,
  { sense }: BendSpan,
): { readonly inside: BendFace; readonly outside: BendFace } {
  const [left, right] =
    sheet.kind === "fence"
      ? (["outboard face", "inboard face"] as const)
      : (["upper face", "lower face"] as const);
  return sense > 0 ? { inside: left, outside: right } : { inside: right, outside: left };
}

/** What of a sheet its outline covers, along the middle of its foam. */
function coveredBy(sheet: Sheet): { readonly fromMm: number; readonly toMm: number } {
  const us = sheet.loops.flatMap(({ edges }) => edges.flatMap(({ flat }) => flat.map(({ u }) => u)));
  let [fromMm, toMm] = [at(us, 0), at(us, 0)];
  for (const u of us) {
    fromMm = Math.min(fromMm, u);
    toMm = Math.max(toMm, u);
  }
  return { fromMm, toMm };
}
