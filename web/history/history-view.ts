import { create } from "zustand";

/** Whether the steps and snapshots are on screen, and how wide; never saved with the document. */
export interface HistoryView {
  readonly isShown: boolean;
  readonly widthPx: number;
  show(isShown: boolean): void;
  setWidth(widthPx: number): void;
}

export const useHistoryView = create<HistoryView>()((set) => ({
  isShown: false,
  widthPx: 320,
  show: (isShown) => set({ isShown }),
  setWidth: (widthPx) => set({ widthPx }),
}));

/** Shows the steps and snapshots, or puts them away. */
export function toggleSteps(): void {
  const { isShown, show } = useHistoryView.getState();
  show(!isShown);
}
