import type { Seam, Strip } from "../cutting/index.ts";
import { at, formatMm } from "../foundation/index.ts";
import type { Joint } from "../joints/index.ts";
import type { FlatEdge, Part, PartEdge } from "../patterns/index.ts";
import { bevelRange } from "./bevel-words.ts";
import type { Design } from "./design.ts";

/** What lies at an edge of a strip, in words for a label: the neighbour and how the edge is cut. */
export function edgeWords(design: Design, strip: Strip, part: Part, edge: FlatEdge): string {
  if (edge.role === "seam") {
    const seam = seamAt(design, strip, edge);
    if (seam === undefined) return "seam, square";
    const cut =
      seam.bevelRad === undefined
        ? (taperWords(strip, edge.edgeId) ?? "square")
        : `bevel ${bevelRange(measuredEdge(strip, edge)?.bevels ?? [], part.kind)}`;
    return `seam to ${otherOf(seam.stripIds, strip.id)}, ${cut}`;
  }
  const joints = jointsAt(design, part, edge.edgeId);
  const measured = measuredEdge(strip, edge) ?? part.edges.find(({ edgeId }) => edgeId === edge.edgeId);
  const bevels = bevelRange(measured?.bevels ?? [], part.kind);
  const bevel = bevels === "square" ? bevels : `bevel ${bevels}`;
  if (measured?.opening) {
    const wall = measured.opening.cut === "upright" ? `upright wall: ${bevel}` : "opening, square";
    return `${wall}${letInWords(edge)}`;
  }
  if (joints.length === 0)
    return edge.role === "free"
      ? `free edge, ${bevel}${letInWords(edge)}${pastWords(edge)}`
      : `joint, ${bevel}`;
  const spare =
    edge.spare?.for === "gap" ? `; ${formatMm(edge.spare.lengthMm)} mm spare, cut to the gap` : "";
  if (joints.length === 1)
    return joints.map((joint) => `joins ${otherPart(joint, part)}, ${cutWords(joint, bevel)}${spare}`).join();
  return `${joints.map((joint) => `joins ${jointWords(joint, part)}`).join("; ")}${spare}`;
}

/** What stands outside the foam along an edge. */
const letInWords = ({ letIn }: FlatEdge): string =>
  letIn
    ? `; ${formatMm(letIn.widthMm)} mm ${letIn.of === "insert" ? "hard insert" : "flange"} outside it`
    : "";

const pastWords = ({ spare }: FlatEdge): string =>
  spare?.for === "hold" ? `; runs ${formatMm(spare.lengthMm)} mm past it, trim after the first skin` : "";

/** How an edge is tapered for its scarf; undefined where it is not. */
export function taperWords(strip: Strip, seamEdgeId: string): string | undefined {
  const taper = strip.tapers?.find((one) => one.seamEdgeId === seamEdgeId);
  return taper && `scarf: ${formatMm(taper.lengthMm)} mm tapered to nothing, ${taper.face}`;
}

/** What is measured of an edge of a strip. */
export function measuredEdge(strip: Strip, edge: FlatEdge): PartEdge | undefined {
  const index = strip.loops.flatMap((loop) => loop.edges).indexOf(edge);
  const own = strip.edges[index];
  return own?.edgeId === edge.edgeId ? own : strip.edges.find(({ edgeId }) => edgeId === edge.edgeId);
}

/** The neighbour of a part at a joint, and the cut: `S2R, mitre 3.5°`, with the face that is longer. */
export function jointWords(joint: Joint, part: Part): string {
  const side = sideOf(joint, part);
  const stations = joint.stations.map(({ alongMm, bevelRad }) => ({ alongMm, bevelRad: at(bevelRad, side) }));
  const start = { alongMm: 0, bevelRad: at(joint.bevelRad, side) };
  const bevel = bevelRange(stations.length > 0 ? stations : [start], part.kind);
  return `${otherPart(joint, part)}, ${cutWords(joint, bevel === "square" ? bevel : `bevel ${bevel}`)}`;
}

const otherPart = (joint: Joint, part: Part): string => at(joint.partIds, 1 - sideOf(joint, part));

const cutWords = ({ cut }: Joint, bevel: string): string => (bevel === "square" ? cut : `${cut}, ${bevel}`);

/** Which of the two parts of a joint this is. */
export const sideOf = (joint: Joint, part: Part): 0 | 1 => (joint.partIds[0] === part.id ? 0 : 1);

/** The joints of a part, at one of its edges or at all. */
export const jointsAt = (design: Design, part: Part, edgeId?: string): readonly Joint[] =>
  design.joints.filter(
    (joint) =>
      joint.partIds.includes(part.id) && (edgeId === undefined || edgeOfJoint(joint, part) === edgeId),
  );

/** The edge of a part that a joint runs along. */
const edgeOfJoint = (joint: Joint, part: Part): string => at(joint.edgeIds, sideOf(joint, part));

/** The seam that an edge of a strip lies on: the nearest of its seams. */
export function seamAt(design: Design, strip: Strip, edge: FlatEdge): Seam | undefined {
  const middle = at(edge.points, Math.floor(edge.points.length / 2));
  const miss = (seam: Seam) => Math.abs((seam.runs === "along ruling" ? middle.u : middle.v) - seam.atMm);
  return design.seams.filter((seam) => seam.stripIds.includes(strip.id)).sort((a, b) => miss(a) - miss(b))[0];
}

export const otherOf = (pair: readonly [string, string], one: string): string =>
  pair[0] === one ? pair[1] : pair[0];
