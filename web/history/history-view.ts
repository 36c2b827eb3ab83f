import { create } from "zustand";

/** What stands for the tray as it is now where a snapshot is named. */
export const NOW = "now";

/** Two snapshots that are compared, by their ids; or the tray as it is now. */
export interface Compared {
  readonly beforeId: string;
  readonly afterId: string;
}

/** Whether the steps and snapshots are on screen, and how wide, and what is compared; never saved with the document. */
export interface HistoryView {
  readonly isShown: boolean;
  readonly widthPx: number;
  readonly compared: Compared | undefined;
  show(isShown: boolean): void;
  setWidth(widthPx: number): void;
  compare(compared: Compared | undefined): void;
}

export const useHistoryView = create<HistoryView>()((set) => ({
  isShown: false,
  widthPx: 320,
  compared: undefined,
  show: (isShown) => set({ isShown }),
  setWidth: (widthPx) => set({ widthPx }),
  compare: (compared) => set({ compared }),
}));

/** Shows the steps and snapshots, or puts them away. */
export function toggleSteps(): void {
  const { isShown, show } = useHistoryView.getState();
  show(!isShown);
}
