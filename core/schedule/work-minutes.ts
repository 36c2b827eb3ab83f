import { lengthOfEdgeMm, type Seam, type Strip } from "../cutting/index.ts";
import { at } from "../foundation/index.ts";
import { allRibs, type Jig } from "../jig/index.ts";
import type { Joint } from "../joints/index.ts";
import type { FlatEdge } from "../patterns/index.ts";
import type { Project } from "../project/index.ts";

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

/** What the work up to the bare shell is made of. */
export interface Workpieces {
  readonly strips: readonly Strip[];
  readonly seams: readonly Seam[];
  readonly joints: readonly Joint[];
  readonly jig: Jig;
}

/** Work by its kind, minutes of one person. A first job takes half as long again; that is left to the reader. */
export interface WorkMinutes {
  readonly templates: number;
  readonly cutting: number;
  readonly ribs: number;
  readonly settingUp: number;
  readonly gluing: number;
  readonly fairing: number;
}

/** The sums of the rates above over everything in the tray. */
export const workMinutes = (pieces: Workpieces, project: Project): WorkMinutes => ({
  templates: templateMinutes(pieces, project),
  cutting: cuttingMinutes(pieces, project),
  ribs: ribMinutes(pieces),
  settingUp: setUpMinutes(pieces),
  gluing: glueMinutes(pieces, MINUTES.gluePerJoint, MINUTES.gluePerM),
  fairing: glueMinutes(pieces, 0, MINUTES.fairSeamPerM),
});

function templateMinutes({ strips }: Workpieces, { paper }: Project): number {
  const areaM2 = strips.reduce((sum, { areaMm2 }) => sum + areaMm2, 0) / 1e6;
  return areaM2 * (paper.size === "roll" ? MINUTES.templateOnRollPerM2 : MINUTES.templatePerM2);
}

function cuttingMinutes({ strips }: Workpieces, { cutting }: Project): number {
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

function ribMinutes({ jig }: Workpieces): number {
  const ribs = allRibs(jig);
  const bevels = ribs.filter(({ cut }) => cut === "bevel").length;
  return ribs.length * MINUTES.rib + bevels * MINUTES.ribBevel;
}

function setUpMinutes({ jig }: Workpieces): number {
  const ribs = allRibs(jig);
  if (ribs.length === 0) return 0;
  const boards = jig.cradle === undefined ? 1 : 2;
  return boards * MINUTES.setUpBase + ribs.length * MINUTES.setUpRib;
}

const glueMinutes = ({ joints, seams }: Workpieces, perJoint: number, perM: number): number =>
  [...joints, ...seams].reduce((sum, { lengthMm }) => sum + perJoint + (lengthMm / 1000) * perM, 0);
