import { lengthOfEdgeMm, type Strip } from "../cutting/index.ts";
import { at } from "../foundation/index.ts";
import { allRibs } from "../jig/index.ts";
import type { FlatEdge } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";
import type { Tray } from "./types.ts";

/** Minutes at the rates of common practice, one person; no source was found for any of them. */
const MINUTES = {
  templatePerM2: 10,
  templateOnRollPerM2: 3,
  rib: 20,
  ribBevel: 10,
  setUpRib: 20,
  setUpBase: 60,
  straightCutPerM: 6,
  curvedCutPerM: 10,
  hotWirePerM: 3,
  hotWireSetUp: 15,
  bevelPerM: 8,
  gluePerJoint: 15,
  gluePerM: 10,
  fairSeamPerM: 10,
} as const;

/**
 * Hands-on time for templates, cutting, jig, and glue-up, hours: the sum of the rates above over everything in
 * the tray. A first job takes half as long again; that is left to the reader.
 */
export function handsOnHours(tray: Tray, project: Project): number {
  const minutes =
    templateMinutes(tray, project) + cuttingMinutes(tray, project) + jigMinutes(tray) + glueMinutes(tray);
  return minutes / 60;
}

function templateMinutes({ strips }: Tray, { paper }: Project): number {
  const areaM2 = strips.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) / 1e6;
  return areaM2 * (paper.size === "roll" ? MINUTES.templateOnRollPerM2 : MINUTES.templatePerM2);
}

function cuttingMinutes({ strips }: Tray, { cutting }: Project): number {
  return strips.reduce((sum, strip) => {
    const cut = cutting.tool === "hot-wire" ? hotWireMinutes(strip) : handCutMinutes(strip);
    return sum + cut + bevelMinutes(strip);
  }, 0);
}

const edgesOf = ({ loops }: Strip): FlatEdge[] => loops.flatMap(({ edges }) => [...edges]);

const hotWireMinutes = (strip: Strip): number =>
  MINUTES.hotWireSetUp +
  edgesOf(strip).reduce((sum, edge) => sum + (lengthOfEdgeMm(edge) / 1000) * MINUTES.hotWirePerM, 0);

const handCutMinutes = (strip: Strip): number =>
  edgesOf(strip).reduce((sum, edge) => {
    const perM = isStraight(edge) ? MINUTES.straightCutPerM : MINUTES.curvedCutPerM;
    return sum + (lengthOfEdgeMm(edge) / 1000) * perM;
  }, 0);

/** Whether a straightedge serves: the edge is no longer than its chord by a hundredth of a per cent. */
function isStraight(edge: FlatEdge): boolean {
  const from = at(edge.points, 0);
  const to = at(edge.points, -1);
  return lengthOfEdgeMm(edge) <= Math.hypot(to.u - from.u, to.v - from.v) * 1.0001;
}

const bevelMinutes = ({ edges }: Strip): number =>
  edges
    .filter(({ bevelRad }) => bevelRad.some((angleRad) => angleRad !== 0))
    .reduce((sum, { flatLengthMm }) => sum + (flatLengthMm / 1000) * MINUTES.bevelPerM, 0);

function jigMinutes({ jig }: Tray): number {
  const ribs = allRibs(jig);
  if (ribs.length === 0) return 0;
  const bevels = ribs.filter(({ cut }) => cut === "bevel").length;
  const boards = jig.cradle === undefined ? 1 : 2;
  return (
    boards * MINUTES.setUpBase + ribs.length * (MINUTES.rib + MINUTES.setUpRib) + bevels * MINUTES.ribBevel
  );
}

const glueMinutes = ({ joints, seams }: Tray): number =>
  [...joints, ...seams].reduce(
    (sum, { lengthMm }) =>
      sum + MINUTES.gluePerJoint + (lengthMm / 1000) * (MINUTES.gluePerM + MINUTES.fairSeamPerM),
    0,
  );
