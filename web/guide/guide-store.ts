import { create } from "zustand";
import { startNew } from "../files/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import { beginGuide, followGuide, type Guide, type Seen } from "./guide-steps.ts";

/** The guided practice that is going on; none most of the time. */
export interface GuideStore {
  readonly guide: Guide | undefined;
  leave(): void;
}

export const useGuide = create<GuideStore>()((set) => ({
  guide: undefined,
  leave: () => set({ guide: undefined }),
}));

function seenNow(): Seen {
  const { tool, selection, stage } = useView.getState();
  return { project: useDocument.getState().project, tool, selection, stage };
}

const follow = (): void => {
  const { guide } = useGuide.getState();
  const seen = seenNow();
  // Another tray was taken in hand: the practice ends with its piece.
  const isOther = guide !== undefined && seen.project.id !== guide.before.project.id;
  const next = guide === undefined || isOther ? undefined : followGuide(guide, seen);
  if (next !== guide) useGuide.setState({ guide: next });
};
useView.subscribe(follow);
useDocument.subscribe(follow);

/** Begins the guided practice on an empty tray; the tray that was open stays on the device. */
export async function startPractice(): Promise<void> {
  await startNew();
  const { setStage, setTool, select } = useView.getState();
  setStage("draw");
  setTool("select");
  select(undefined);
  useGuide.setState({ guide: beginGuide(seenNow()) });
}
