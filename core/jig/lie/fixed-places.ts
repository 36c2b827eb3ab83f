import { at } from "../../foundation/index.ts";
import { bendLine, fibreOf } from "../../surfaces/index.ts";
import { outboardPlaces } from "../outboard-places.ts";
import { runsPast, trimmedLane } from "./lane-places.ts";
import type { LyingFoam } from "./lanes-of.ts";
import type { Lane } from "./types.ts";

/** A rib stands this far inside an end, a joint or a splice, mm: its board and a hand's width of clamp (common practice). */
const INSIDE_MM = 25;
/** Ends of lanes no farther apart than this are one end that runs across, mm. */
const ONE_END_MM = 30;
/** Places nearer together are one rib, mm. */
const ONE_RIB_MM = 25;

/**
 * Where ribs stand in any case: inside both ends of every part that run across, and on both sides of its splices. The first
 * and the last are always there, so that nothing hangs over the jig's ends. An end that runs past its trim line is held by the
 * rib out there, which is among them.
 */
export function fixedPlaces(all: readonly Lane[], foam: LyingFoam, over: Lane["over"]): readonly number[] {
  const outboard = over === "across" ? outboardPlaces(foam.laid).map(({ atMm }) => atMm) : [];
  // Where all of an end runs past its trim line, the rib out there holds it.
  const isHeldOut = (lane: Lane, end: 0 | 1): boolean => runsPast(lane)[end] && outboard.length > 0;
  const lanes = all.map(trimmedLane);
  const startOf = ({ places }: Lane) => at(places, 0).placeMm;
  const endOf = ({ places }: Lane) => at(places, -1).placeMm;
  const partIds = [...new Set(lanes.map(({ partId }) => partId))];
  const starts: number[] = [];
  const ends: number[] = [];
  const [first, last] = [Math.min(...lanes.map(startOf)), Math.max(...lanes.map(endOf))];
  if (!all.some((lane, i) => isHeldOut(lane, 0) && startOf(at(lanes, i)) < first + ONE_END_MM))
    starts.push(first + INSIDE_MM);
  if (!all.some((lane, i) => isHeldOut(lane, 1) && endOf(at(lanes, i)) > last - ONE_END_MM))
    ends.push(last - INSIDE_MM);
  for (const partId of partIds) {
    const own = lanes.filter((lane) => lane.partId === partId);
    if (own.some(({ hangsFree }) => !hangsFree[0] && !hangsFree[1])) continue;
    const [first, last] = [Math.min(...own.map(startOf)), Math.max(...own.map(endOf))];
    if (last - first < 4 * INSIDE_MM) {
      starts.push((first + last) / 2);
      continue;
    }
    const [begun, ended] = [
      own.map(startOf).filter((mm) => mm - first < ONE_END_MM),
      own.map(endOf).filter((mm) => last - mm < ONE_END_MM),
    ];
    const isOut = (end: 0 | 1) => all.some((lane) => lane.partId === partId && isHeldOut(lane, end));
    if (begun.length > 1 && !isOut(0)) starts.push(Math.max(...begun) + INSIDE_MM);
    if (ended.length > 1 && !isOut(1)) ends.push(Math.min(...ended) - INSIDE_MM);
  }
  const splices = over === "across" ? splicesOf(foam) : [];
  return joined([
    ...outboard,
    ...starts,
    ...ends,
    ...splices.flatMap((mm) => [mm - INSIDE_MM, mm + INSIDE_MM]),
  ]);
}

/** Seams that run across, where bends do not lie slantwise; planks are glued up before, to lie in their shape. */
const splicesOf = ({ sheets, parts, seams }: LyingFoam): readonly number[] =>
  seams.flatMap(({ partId, runs, atMm, bevelRad }) => {
    const part = parts.find(({ id }) => id === partId);
    const sheet = sheets.find(({ id }) => id === part?.sheetId);
    if (
      runs !== "along ruling" ||
      bevelRad !== undefined ||
      sheet?.kind !== "section" ||
      sheet.chart.tanHeading !== 0
    )
      return [];
    return [bendLine(sheet).placeAt(fibreOf(sheet, part?.stretches).middleAt(atMm))];
  });

/** In order, on whole millimetres, and those that would stand in each other once. */
function joined(placesMm: readonly number[]): readonly number[] {
  const kept: number[] = [];
  for (const mm of placesMm.map(Math.round).sort((a, b) => a - b))
    if (mm - (kept[kept.length - 1] ?? Number.NEGATIVE_INFINITY) > ONE_RIB_MM) kept.push(mm);
  return kept;
}
