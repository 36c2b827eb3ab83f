import { useEffect, useState } from "react";
import { sceneFor } from "../hand/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { describeSelection } from "../tools/index.ts";

/** A drag changes the words many times a second; they are told once it rests. */
const REST_MS = 500;

/** Tells those who hear the page what is chosen on the drawing, and how it is drawn now. */
export function ChosenAnnounced() {
  const project = useDocument((state) => state.project);
  const selection = useView((view) => view.selection);
  const [words, say] = useState("");
  useEffect(() => {
    const timer = setTimeout(
      () => say(describeSelection(project, sceneFor(project), selection) ?? ""),
      REST_MS,
    );
    return () => clearTimeout(timer);
  }, [project, selection]);
  return (
    <p className="visually-hidden" aria-live="polite" data-testid="chosen-announced">
      {words}
    </p>
  );
}
