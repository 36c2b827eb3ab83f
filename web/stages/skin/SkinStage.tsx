import { TriangleAlert } from "lucide-react";
import { SKIN_CAUTION } from "../../../core/skins/index.ts";
import { useDesign } from "../../stores/index.ts";
import { EmptyPlace, SideSettings } from "../settings/index.ts";
import { ClothPlan } from "./ClothPlan.tsx";
import { CouponFields } from "./CouponFields.tsx";
import { EdgeFields } from "./EdgeFields.tsx";
import { EdgesAndFillets } from "./EdgesAndFillets.tsx";
import { FaceCard } from "./FaceCard.tsx";
import { LaminateFields } from "./LaminateFields.tsx";
import { PanelCards } from "./PanelCards.tsx";
import { PlyFields } from "./PlyFields.tsx";
import { usePatchMaps } from "./use-patch-maps.ts";
import { WeightTable } from "./WeightTable.tsx";
import { ZoneFields } from "./ZoneFields.tsx";

/** What is laid on the foam: the plies of each face, and in which sessions with which pots. */
export function SkinStage() {
  const design = useDesign((state) => state.design);
  const maps = usePatchMaps(design?.skins);
  if (design === undefined) return null;
  const { faces } = design.skins;
  return (
    <div className="two-panes">
      <SideSettings summary="Plies and resin">
        <PlyFields face="lower" title="Lower face and fences, plies from the foam" />
        <PlyFields face="upper" title="Upper face, plies from the foam" />
        <ZoneFields />
        <LaminateFields />
        <EdgeFields />
        <CouponFields />
      </SideSettings>
      <article
        className="pane"
        aria-label="Skins face by face"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: nothing in it can be used, and it must scroll by key.
        tabIndex={0}
      >
        {faces.length === 0 ? (
          <EmptyPlace words="Nothing to skin yet. Draw a section, and choose its plies here." />
        ) : (
          <>
            <p className="caution" data-testid="skin-caution">
              <TriangleAlert className="sign look" aria-hidden />
              <span>
                <b>Take care. </b>
                {SKIN_CAUTION}
              </span>
            </p>
            <EdgesAndFillets skins={design.skins} />
            <PanelCards plan={design.panels} />
            {faces.map((face) => (
              <FaceCard key={face.face} face={face} maps={maps} />
            ))}
            <ClothPlan skins={design.skins} />
            <WeightTable weight={design.weight} />
          </>
        )}
      </article>
    </div>
  );
}
