import type { SpacePoint } from "../foundation/index.ts";
import { glueMassKg, slotFillingKg } from "../glue-up/index.ts";
import { finishedLoops, insertAreaMm2, type Part, partPlaces, polygonOfLoop } from "../patterns/index.ts";
import type { FoldedPlate } from "../plates/index.ts";
import { foamOf, laminateOf, type Project } from "../project/index.ts";
import { foamAwayMm3, type SkinPlan, skinMassKg } from "../skins/index.ts";
import type { Sheet } from "../surfaces/index.ts";
import { centreOf, centreOfLoops, type Weighing } from "./centre-of-mass.ts";
import { bareOf, foamMassKg, insertLines } from "./total-tray.ts";
import type { PartWeight, Spread, Tray, Weight } from "./types.ts";

/** The share of fibre that hand lay-up of woven cloth gives at its wettest and driest (published range). */
const WOVEN_FIBRE = { wettest: 0.45, driest: 0.6 } as const;
/** A weighed coupon is met within this, either way (common practice). */
const COUPON_WITHIN = 0.03;
/** What bare foam drinks may be so much less or more, as a share (common practice). */
const UPTAKE_WITHIN = 0.5;

/**
 * What each part weighs with its skins, and the whole tray with glue, fillets and metal, at little, likely and much resin; and
 * where the centre of mass lies, in the car's frame. Mounts are not in it.
 */
export function weighTray(
  tray: Tray & { readonly sheets: readonly Sheet[]; readonly skins: SkinPlan },
  project: Project,
): Weight {
  const { parts, sheets, skins, joints, plates } = tray;
  const laminate = laminateOf(project);
  const spread = resinSpread(laminate);
  const likely = { fibreMassShare: laminate.fibreMassShare, preWetKgPerM2: laminate.preWetKgPerM2 };
  const weights = parts.map((part): PartWeight => {
    const foamKg = Math.max(0, foamMassKg(part, project) - flangeKg(part, project));
    const insertKg = insertAreaMm2(part) * part.thicknessMm * 1e-9 * laminate.insertKgPerM3;
    const skinAt = (mix: typeof likely) => skinMassKg(skins, part.id, mix) + panelSkinKg(part, mix);
    const skinKg = { low: skinAt(spread.low), likely: skinAt(likely), high: skinAt(spread.high) };
    const centre = middleOf(part, sheets);
    return {
      partId: part.id,
      foamKg,
      insertKg,
      skinKg,
      massKg: added(foamKg + insertKg, skinKg),
      centre,
    };
  });
  const partOf = (id: string) => parts.find((part) => part.id === id);
  const others: readonly Weighing[] = [
    ...bareOf(tray).joints.map(({ lengthMm, partIds, stations }) => ({
      massKg: glueMassKg(
        lengthMm,
        partIds.flatMap((id) => partOf(id) ?? []),
        project,
      ),
      centre: meanOf(stations.map((station) => station.at)),
    })),
    ...tray.seams.flatMap(({ lengthMm, partId, scarfMm }) => {
      const part = partOf(partId);
      const centre = weights.find((one) => one.partId === partId)?.centre;
      return part && centre ? [{ massKg: glueMassKg(lengthMm, [part], project, scarfMm), centre }] : [];
    }),
    ...parts.flatMap((part) => {
      const centre = weights.find((one) => one.partId === part.id)?.centre;
      return insertLines(part).flatMap(({ lengthMm, meeting }) =>
        centre ? [{ massKg: glueMassKg(lengthMm, meeting, project), centre }] : [],
      );
    }),
    ...tray.strips.flatMap((strip) => {
      const centre = weights.find((one) => one.partId === strip.partId)?.centre;
      return centre ? [{ massKg: slotFillingKg([strip], project), centre }] : [];
    }),
    ...skins.fillets.flatMap(({ jointId, massKg }) => {
      const stations = joints.find(({ id }) => id === jointId)?.stations;
      return stations ? [{ massKg, centre: meanOf(stations.map((station) => station.at)) }] : [];
    }),
    ...tray.panels.bonds.flatMap(({ jointIds, resinKg, tapeKg }) => {
      const own = joints.filter(({ id }) => jointIds.includes(id)).flatMap(({ stations }) => stations);
      return [{ massKg: resinKg + tapeKg, centre: meanOf(own.map((station) => station.at)) }];
    }),
    ...plates.flatMap(weighPlate),
  ];
  const otherKg = others.reduce((sum, { massKg }) => sum + massKg, 0);
  const whole = centreOf([
    ...weights.map(({ massKg, centre }) => ({ massKg: massKg.likely, centre })),
    ...others,
  ]);
  const total = (of: keyof Spread) => weights.reduce((sum, { massKg }) => sum + massKg[of], otherKg);
  return {
    parts: weights,
    otherKg,
    massKg: { low: total("low"), likely: total("likely"), high: total("high") },
    centre: whole.centre,
  };
}

/** What both skins of a fence weigh that is cut from a panel, kg; nothing for any other part. */
const panelSkinKg = ({ panel, flatAreaMm2 }: Part, { fibreMassShare, preWetKgPerM2 }: Mix): number => {
  if (panel === undefined) return 0;
  const clothKgPerM2 = panel.plies.reduce((sum, { cloth }) => sum + cloth.arealKgPerM2, 0);
  return 2e-6 * flatAreaMm2 * (preWetKgPerM2 + clothKgPerM2 / fibreMassShare);
};

/** The foam that flanges take off a part, kg. */
const flangeKg = (part: Part, project: Project): number =>
  foamAwayMm3(part, laminateOf(project)) * 1e-9 * (foamOf(project, part.foamId)?.densityKgPerM3 ?? 0);

const added = (kg: number, { low, likely, high }: Spread): Spread => ({
  low: kg + low,
  likely: kg + likely,
  high: kg + high,
});

type Mix = Parameters<typeof skinMassKg>[2];

/** The leanest and the wettest laminate to reckon with: near a weighed coupon, else the range of hand lay-up. */
function resinSpread({ fibreMassShare, preWetKgPerM2, weighed }: ReturnType<typeof laminateOf>): {
  readonly low: Mix;
  readonly high: Mix;
} {
  const isWeighed = weighed.fibreMassShare !== undefined;
  const lean = isWeighed ? fibreMassShare + COUPON_WITHIN : Math.max(fibreMassShare, WOVEN_FIBRE.driest);
  const wet = isWeighed ? fibreMassShare - COUPON_WITHIN : Math.min(fibreMassShare, WOVEN_FIBRE.wettest);
  return {
    low: { fibreMassShare: lean, preWetKgPerM2: preWetKgPerM2 * (1 - UPTAKE_WITHIN) },
    high: { fibreMassShare: wet, preWetKgPerM2: preWetKgPerM2 * (1 + UPTAKE_WITHIN) },
  };
}

/** The centre of a part's foam where it lies in the car. */
function middleOf(part: Part, sheets: readonly Sheet[]): SpacePoint {
  const places = partPlaces(sheets, part);
  const sheet = sheets.find(({ id }) => id === part.sheetId);
  if (!places || !sheet) return { x: 0, y: 0, z: 0 };
  return centreOfLoops(finishedLoops(part).map(polygonOfLoop), (flat) => places(flat, sheet.depths.neutralMm))
    .centre;
}

/** A folded plate on each hand: its base and its wings by their areas. */
function weighPlate({ base, wings, zMm, thicknessMm, massKg, parts }: FoldedPlate): readonly Weighing[] {
  const onPlan = base.map((loop) => loop.map(({ x, y }) => ({ u: x, v: y })));
  const flat = centreOfLoops(onPlan, ({ u, v }) => ({ x: u, y: v, z: zMm + thicknessMm / 2 }));
  const pieces = [
    { massKg: flat.areaMm2, centre: flat.centre },
    ...wings.map(({ airFace, upperFace }) => ({
      massKg: quadMm2(airFace),
      centre: meanOf([...airFace, ...upperFace]),
    })),
  ];
  const { centre } = centreOf(pieces);
  return parts.map(({ hand }) => ({
    massKg,
    centre: hand === "left" ? { ...centre, y: -centre.y } : centre,
  }));
}

function quadMm2(corners: readonly SpacePoint[]): number {
  const [a, b, c, d] = corners;
  if (!a || !b || !c || !d) return 0;
  const cross = (p: SpacePoint, q: SpacePoint, r: SpacePoint) => {
    const [u, v] = [
      { x: q.x - p.x, y: q.y - p.y, z: q.z - p.z },
      { x: r.x - p.x, y: r.y - p.y, z: r.z - p.z },
    ];
    return Math.hypot(u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x) / 2;
  };
  return cross(a, b, c) + cross(a, c, d);
}

const meanOf = (points: readonly SpacePoint[]): SpacePoint =>
  points.length === 0
    ? { x: 0, y: 0, z: 0 }
    : centreOf(points.map((centre) => ({ massKg: 1, centre }))).centre;
