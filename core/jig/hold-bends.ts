import {
  type BendZone,
  countFor,
  holdDownN,
  holdingMomentPerMm,
  overBendRadiusMm,
  radiusAfterMm,
  springbackShare,
  washerN,
  weightN,
} from "../bending/index.ts";
import type { Seam } from "../cutting/index.ts";
import { type Part, polygonOfLoop, stretchesAcross } from "../patterns/index.ts";
import { foamOf, type Project } from "../project/index.ts";
import { caresOf } from "./bend-cares.ts";
import type { Lie, RibForce } from "./lie/types.ts";
import type { BendHold, HoldDown, Springback } from "./types.ts";

/** Ribs that are placed by hand are taken to stand so far apart, mm. */
const USUAL_SPACING_MM = 300;

/**
 * How every bend of every part is held on the jig until it is skinned, and what it gives back: the moment that bends the
 * foam, and what the rib that it lifts off most must give (`Lie`; on a lever of one rib spacing where no ribs carry the part), as
 * sandbags, straps or screws; springback when it is let go with one skin and with
 * both; and what wants care. Slots and planks lie in their shape: they are held against nothing but their own weight.
 */
export const holdBends = (
  parts: readonly Part[],
  seams: readonly Seam[],
  project: Project,
  lie?: Pick<Lie, "forces" | "pasts">,
): readonly BendHold[] =>
  parts.flatMap((part) =>
    part.kind === "transition"
      ? []
      : part.zones.flatMap((zone): readonly BendHold[] => {
          if (zone.leastRadiusMm === undefined) return [];
          const foam = zone.verdict === "bend cold" ? foamOf(project, part.foamId) : undefined;
          const bent = foam && {
            modulusMPa: foam.modulusMPa,
            thicknessMm: part.thicknessMm,
            radiusMm: zone.leastRadiusMm,
          };
          return [
            {
              partId: part.id,
              fromUMm: zone.fromUMm,
              toUMm: zone.toUMm,
              // A fence stands: nothing lies on ribs that could be held down.
              ...(bent &&
                part.kind !== "fence" && {
                  holdDown: holdDownOf(bent, widthMm(part, zone), project, ribOf(part, parts, lie)),
                }),
              ...(bent && { springback: springbackOf(bent, project) }),
              cares: caresOf(part, zone, seams, lie?.pasts ?? []),
            },
          ];
        }),
  );

interface Bent {
  readonly modulusMPa: number;
  readonly thicknessMm: number;
  readonly radiusMm: number;
}

/** How wide a part is along the ruling in the middle of a bend. */
const widthMm = ({ loops }: Part, { fromUMm, toUMm }: BendZone): number =>
  stretchesAcross(loops.map(polygonOfLoop), (fromUMm + toUMm) / 2).reduce(
    (sum, [from, to]) => sum + to - from,
    0,
  );

/** What ribs give a part, or the one that it is the image of: the one that must hold it down most. */
function ribOf(
  part: Part,
  parts: readonly Part[],
  lie: Pick<Lie, "forces"> | undefined,
): RibForce | undefined {
  const images = parts.filter(({ sheetId }) => sheetId === part.sheetId).map(({ id }) => id);
  const own = lie?.forces.filter(({ partId }) => images.includes(partId)) ?? [];
  // On two ribs foam stays straight: nothing bends it yet.
  if (own.length < 3) return undefined;
  return own.reduce<RibForce | undefined>(
    (most, one) => (most && most.holdDownN >= one.holdDownN ? most : one),
    undefined,
  );
}

function holdDownOf(
  bent: Bent,
  acrossMm: number,
  { bending, jig, glue }: Project,
  rib: RibForce | undefined,
): HoldDown {
  const { holdBy, pinN } = bending;
  const leverMm = jig.across.kind === "spacing" ? jig.across.spacingMm : USUAL_SPACING_MM;
  const momentPerMm = holdingMomentPerMm(bent);
  const forceN = rib ? rib.holdDownN : holdDownN(momentPerMm, acrossMm, leverMm);
  const pinsN = pinN * Math.floor(acrossMm / glue.pinSpacingCurvedMm);
  const eachN = {
    sandbags: weightN(bending.sandbagKg),
    straps: bending.strapN,
    screws: washerN(bending.washerMm, bending.crushMPa),
  }[holdBy];
  const count = countFor(Math.max(0, forceN - pinsN), eachN);
  return {
    momentPerMm,
    widthMm: acrossMm,
    leverMm,
    ...(rib && { ribId: rib.ribId }),
    forceN,
    by: holdBy,
    eachN,
    count: Number.isFinite(count) ? count : null,
  };
}

function springbackOf({ modulusMPa, thicknessMm, radiusMm }: Bent, { bending, skins }: Project): Springback {
  const foam = { modulusMPa, thicknessMm };
  const skin = (mm: number) => (mm > 0 ? [{ modulusMPa: bending.skinModulusMPa, thicknessMm: mm }] : []);
  const oneSkin = springbackShare([foam], [...skin(skins.lowerMm), foam]);
  const bothSkins = springbackShare([foam], [...skin(skins.lowerMm), foam, ...skin(skins.upperMm)]);
  return {
    oneSkin,
    bothSkins,
    radiusAfterOneMm: radiusAfterMm(radiusMm, oneSkin),
    radiusAfterBothMm: radiusAfterMm(radiusMm, bothSkins),
    overBentOneMm: overBendRadiusMm(radiusMm, oneSkin),
    overBentBothMm: overBendRadiusMm(radiusMm, bothSkins),
  };
}
