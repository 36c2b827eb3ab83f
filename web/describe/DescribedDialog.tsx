import { Dialog } from "../controls/index.ts";
import { sceneFor } from "../hand/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { describeDrawing, describeSelection } from "../tools/index.ts";

/** What is drawn, in words: what is chosen, else everything. */
export function DescribedDialog() {
  const { project } = useDocument.getState();
  const { selection, setOverlay } = useView.getState();
  const scene = sceneFor(project);
  const chosen = describeSelection(project, scene, selection);
  const words = chosen === undefined ? describeDrawing(project, scene) : [chosen];
  return (
    <Dialog
      title={chosen === undefined ? "Everything that is drawn" : "What is chosen"}
      testId="described"
      onClose={() => setOverlay(undefined)}
    >
      {words.map((word) => (
        <p key={word}>{word}</p>
      ))}
      {words.length === 0 ? <p>Nothing is drawn yet.</p> : null}
    </Dialog>
  );
}
