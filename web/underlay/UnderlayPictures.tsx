import { memo, useEffect, useState } from "react";
import { Group, Image, Line } from "react-konva";
import { toDegrees } from "../../core/foundation/index.ts";
import { checkRemarks, cornersOfPicture, type Underlay } from "../../core/project/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import type { DrawingView } from "../tools/index.ts";
import { loadImage } from "./read-picture.ts";

/** From mm to px in one view, as the board has it. */
interface ViewTransform {
  readonly originXPx: number;
  readonly originYPx: number;
  readonly pxPerMmAcross: number;
  readonly pxPerMmUp: number;
}

interface PicturesProps {
  readonly view: DrawingView;
  readonly transform: ViewTransform;
  /** The colour that says what is chosen. */
  readonly mark: string;
}

/** The pictures under one view of the drawing; the chosen one with a frame, so that it can be seen where it ends. */
export const UnderlayPictures = memo(function UnderlayPictures({ view, transform, mark }: PicturesProps) {
  const project = useDocument((state) => state.project);
  const selection = useView((state) => state.selection);
  if (project.underlays.length === 0) return null;
  const shown = checkRemarks(project).underlays.filter(
    (underlay) => underlay.view === view && !underlay.hidden,
  );
  const chosenId = selection?.kind === "underlay" ? selection.underlayId : undefined;
  return (
    <Group
      x={transform.originXPx}
      y={transform.originYPx}
      scaleX={transform.pxPerMmAcross}
      scaleY={-transform.pxPerMmUp}
      listening={false}
    >
      {shown.map((underlay) => (
        <Picture key={underlay.id} underlay={underlay} />
      ))}
      {shown.map((underlay) =>
        underlay.id === chosenId ? (
          <Line
            key={underlay.id}
            points={cornersOfPicture(underlay).flat()}
            closed
            stroke={mark}
            strokeWidth={1.5}
            strokeScaleEnabled={false}
            dash={underlay.locked ? [4, 4] : []}
          />
        ) : null,
      )}
    </Group>
  );
});

const Picture = memo(function Picture({ underlay }: { readonly underlay: Underlay }) {
  const { picture, widthPx, heightPx, origin, mmPerPx, turnRad, opacity } = underlay;
  const image = useImage(picture);
  if (!image) return null;
  return (
    <Group x={origin.x} y={origin.up} rotation={toDegrees(turnRad)} scaleX={mmPerPx} scaleY={-mmPerPx}>
      <Image image={image} width={widthPx} height={heightPx} opacity={opacity} listening={false} />
    </Group>
  );
});

/** The picture as an image, once the browser has read it. */
function useImage(picture: string): HTMLImageElement | undefined {
  const [image, setImage] = useState<HTMLImageElement>();
  useEffect(() => {
    let isWanted = true;
    loadImage(picture).then(
      (loaded) => isWanted && setImage(loaded),
      () => isWanted && setImage(undefined),
    );
    return () => {
      isWanted = false;
    };
  }, [picture]);
  return image;
}
