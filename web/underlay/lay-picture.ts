import { laidInto, type Underlay } from "../../core/project/index.ts";
import { useFiles } from "../files/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { type DrawingView, newId } from "../tools/index.ts";
import { useLaying } from "./laying-store.ts";
import { readPicture } from "./read-picture.ts";

/** A box in mm of a view. */
export interface ViewBox {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
}

/** How strongly a new picture shows: what is drawn over it stays darker. */
const NEW_OPACITY = 0.5;
const MOST_NAME_LETTERS = 60;

/**
 * Lays a picture file under a view of the drawing, as large as what is drawn there, and takes the picture tool up.
 * A file that cannot be used is told in words, and nothing is changed.
 */
export async function layPicture(file: File, view: DrawingView, box: ViewBox): Promise<void> {
  useLaying.setState({ isReading: true, told: undefined });
  const reading = await readPicture(file);
  useLaying.setState({ isReading: false });
  if (!reading.ok) {
    useFiles.getState().tell({ title: "The picture was not laid under the drawing", text: reading.words });
    return;
  }
  const { picture, widthPx, heightPx, wasPx } = reading.value;
  const { project, dispatch, isReadOnly } = useDocument.getState();
  if (isReadOnly) return;
  const id = newId(
    "picture",
    project.underlays.map((underlay) => underlay.id),
  );
  const underlay: Underlay = {
    id,
    name: nameOfFile(file.name),
    view,
    picture,
    widthPx,
    heightPx,
    ...laidInto({ widthPx, heightPx }, view === "plan" ? box : standingOn(box, widthPx, heightPx)),
    opacity: NEW_OPACITY,
  };
  dispatch({ kind: "add-underlay", underlay });
  useView.getState().setTool("underlay");
  useView.getState().select({ kind: "underlay", underlayId: id });
  if (wasPx)
    useLaying.setState({
      told: {
        underlayId: id,
        words: `Kept at ${widthPx} × ${heightPx} pixels; the file has ${wasPx[0]} × ${wasPx[1]}.`,
      },
    });
}

/** A side view stands on the ground, as long as the tray, however tall it is. */
const standingOn = ({ left, right }: ViewBox, widthPx: number, heightPx: number): ViewBox => ({
  left,
  right,
  bottom: 0,
  top: ((right - left) * heightPx) / widthPx,
});

const nameOfFile = (fileName: string): string =>
  fileName.replace(/\.[a-z0-9]+$/i, "").slice(0, MOST_NAME_LETTERS);
