import { at, type Problem } from "../../foundation/index.ts";
import { lieSettingsOf, type Project } from "../../project/index.ts";
import type { JigGround } from "../jig-ground.ts";
import type { Jig, Rib } from "../types.ts";
import { checkAsBuilt } from "./check-as-built.ts";
import { checkPlaces, upFaceOver } from "./check-places.ts";
import { judgeLine, ribsBeside, stretchAt } from "./judge-line.ts";
import { asideAt, runsPast, trimmedLane } from "./lane-places.ts";
import { type LyingFoam, lanesOf } from "./lanes-of.ts";
import { layLane } from "./lay-lane.ts";
import { isClear, obstaclesOf } from "./obstacles.ts";
import { pastsOf } from "./pasts-of.ts";
import { ribForces } from "./rib-forces.ts";
import type { Lane, LaneSupport, Lie, LieLine, LieWorst, LieWorstPush, RibLimit } from "./types.ts";

/**
 * How the foam lies on the ribs of a jig: every lane over its ribs, the worst of each part, what each rib gives, and what
 * would ask for a further one. Where ribs run both ways a part is taken to span the way in which it lies better.
 * Problem: foam-off-shape, once for each part that lies farther off than the form tolerance.
 */
export function layFoam(
  { ribs, baseboard }: Jig,
  foam: LyingFoam,
  project: JigGround & Pick<Project, "asBuilt">,
): { readonly lie: Lie; readonly problems: readonly Problem[] } {
  const settings = lieSettingsOf(project);
  const ways = (["across", "along"] as const)
    .filter((over) => ribs.some(({ runs }) => runs === over))
    .map((over) => lanesOf(foam, project, over));
  const laid = foam.parts.flatMap(({ id }): LaidPart[] => {
    const [way, other] = ways.map((lanes) => layPart(id, lanes, ribs, settings)).sort(bySafety);
    return way ? [way] : other ? [other] : [];
  });
  const levelMm = project.jig.attitude === "upright" ? baseboard.levelZMm : -baseboard.levelZMm;
  const lines = laid.flatMap((part) => part.lines.map((line) => overBaseboard(line, levelMm)));
  const drawnOver = upFaceOver(foam, project, baseboard.levelZMm);
  const asBuilt = checkAsBuilt(project.asBuilt ?? [], ribs, drawnOver);
  const worst = laid.flatMap(({ worst }) => worst ?? []).sort((a, b) => offOf(b) - offOf(a));
  return {
    lie: {
      settings,
      lines,
      worst,
      pushed: laid.flatMap(({ pushed }) => pushed ?? []),
      forces: ribForces(lines),
      limits: limitsOf(ribs, lines, settings.toleranceMm),
      checks: checkPlaces(lines, ribs, drawnOver),
      ...(asBuilt && { asBuilt }),
      inOpenings: ribsInOpenings(ribs, foam, project),
      pasts: pastsOf(foam.laid, lines, ribs),
      unheld: laid.filter(({ isHeld }) => !isHeld).map(({ partId }) => partId),
    },
    problems: worst.flatMap((one) => offShape(one, foam, settings.toleranceMm)),
  };
}

function ribsInOpenings(ribs: readonly Rib[], foam: LyingFoam, project: JigGround): readonly string[] {
  const obstacles = obstaclesOf(foam, project);
  return ribs.filter(({ runs, atMm }) => !isClear(atMm, obstacles[runs])).map(({ id }) => id);
}

/** A line with its heights counted from the baseboard. */
function overBaseboard(line: LieLine, levelMm: number): LieLine {
  const { stations, past, without } = line;
  const over = (some: LieLine["stations"]) =>
    some.map((station) => ({ ...station, heightMm: station.heightMm - levelMm }));
  return { ...line, stations: over(stations), past: over(past), without: over(without) };
}

interface LaidPart {
  readonly partId: string;
  readonly lines: readonly LieLine[];
  /** Whether every lane of it lies on two ribs. */
  readonly isHeld: boolean;
  readonly worst?: LieWorst;
  readonly pushed?: LieWorstPush;
}

const offOf = ({ errorMm }: { readonly errorMm: number }): number => Math.abs(errorMm);

/** A part on the ribs of one direction; undefined where it has no lane over them. */
function layPart(
  partId: string,
  all: readonly Lane[],
  ribs: readonly Rib[],
  settings: Lie["settings"],
): LaidPart | undefined {
  const lanes = all.filter((lane) => lane.partId === partId);
  if (lanes.length === 0) return undefined;
  const lines = lanes.flatMap((lane) => layWithPast(lane, supportsOf(lane, ribs), settings) ?? []);
  const stations = lines.flatMap((line) => line.stations.map((station) => ({ line, station })));
  const pushes = lines.flatMap((line) => line.pushes.map((push) => ({ line, push })));
  const [far] = stations.sort((a, b) => offOf(b.station) - offOf(a.station));
  const [soft] = pushes.sort((a, b) => b.push.strainShare - a.push.strainShare);
  return {
    partId,
    lines,
    isHeld: lines.length === lanes.length,
    ...(far && { worst: { ...far.station, ...whereOn(far.line, far.station.alongMm) } }),
    ...(soft && { pushed: { ...soft.push, ...whereOn(soft.line, soft.push.alongMm) } }),
  };
}

/** A lane on its ribs, and how it would lie if it ended at the trim lines. */
function layWithPast(
  lane: Lane,
  supports: readonly LaneSupport[],
  settings: Lie["settings"],
): LieLine | undefined {
  const line = layLane(lane, supports, settings, "fine");
  if (!line || !runsPast(lane).includes(true)) return line;
  const short = trimmedLane(lane);
  const [from, to] = [at(short.places, 0).placeMm, at(short.places, -1).placeMm];
  const inside = supports.filter(({ placeMm }) => placeMm > from && placeMm < to);
  return { ...line, without: layLane(short, inside, settings, "fine")?.stations ?? [] };
}

/** Held on every lane before not held; then what lies nearer to its shape. */
function bySafety(a: LaidPart | undefined, b: LaidPart | undefined): number {
  const rank = (part: LaidPart | undefined) => (part?.isHeld ? 0 : part ? 1 : 2);
  const off = (part: LaidPart | undefined) => (part?.worst ? offOf(part.worst) : 0);
  return rank(a) - rank(b) || off(a) - off(b);
}

/** The ribs that a lane lies on, as they are drawn. */
const supportsOf = ({ over, places }: Lane, ribs: readonly Rib[]): readonly LaneSupport[] =>
  ribs
    .filter(
      (rib) =>
        rib.runs === over &&
        rib.atMm >= at(places, 0).placeMm &&
        rib.atMm <= at(places, -1).placeMm &&
        reaches(rib, asideAt(places, rib.atMm)),
    )
    .map(({ id, atMm: placeMm }) => ({ ribId: id, placeMm, liftMm: 0 }));

function reaches({ outlineMm }: Rib, asideMm: number): boolean {
  const us = outlineMm.map(({ u }) => u);
  return Math.min(...us) <= asideMm && Math.max(...us) >= asideMm;
}

const whereOn = (line: LieLine, alongMm: number) => ({
  partId: line.partId,
  ribIds: ribsBeside(line, stretchAt(line, alongMm)),
});

/** What would ask for a rib beside each one first. */
const limitsOf = (
  ribs: readonly Rib[],
  lines: readonly LieLine[],
  toleranceMm: number,
): readonly RibLimit[] => {
  const shares = lines.flatMap((line) => judgeLine(line, toleranceMm));
  return ribs.flatMap(({ id }): RibLimit[] => {
    const [most] = shares.filter(({ ribIds }) => ribIds.includes(id)).sort((a, b) => b.share - a.share);
    return most ? [{ ribId: id, by: most.by, share: most.share }] : [];
  });
};

function offShape(worst: LieWorst, { parts }: LyingFoam, toleranceMm: number): readonly Problem[] {
  const { errorMm, sagMm, battenMm, partId, at: where, ribIds } = worst;
  const part = parts.find(({ id }) => id === partId);
  if (!part || Math.abs(errorMm) <= toleranceMm) return [];
  const [ribId] = ribIds;
  const place = { itemId: part.itemId, partId, ...(ribId !== undefined && { ribId }) };
  const by = Math.abs(battenMm) > Math.abs(sagMm) ? ("bend" as const) : ("sag" as const);
  return [{ kind: "foam-off-shape", place, name: part.name, errorMm, toleranceMm, at: where, ribIds, by }];
}
