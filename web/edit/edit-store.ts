import { create } from "zustand";
import { useView } from "../stores/index.ts";

/** Whether what is made takes the place of what is chosen, or stands beside it. */
export type Makes = "copy" | "itself";

/** Something that is asked for in numbers before it is done to what is chosen. Lengths in mm, angles in degrees. */
export type EditTask =
  | {
      readonly kind: "move";
      readonly x: number;
      readonly y: number;
      readonly z: number;
      readonly profiles: "stay" | "go along";
    }
  | { readonly kind: "turn"; readonly degrees: number; readonly x: number; readonly y: number }
  | { readonly kind: "scale"; readonly percent: number; readonly x: number; readonly y: number }
  | {
      readonly kind: "mirror";
      readonly across: "lengthwise" | "station";
      readonly atMm: number;
      readonly makes: Makes;
    }
  | { readonly kind: "repeat"; readonly count: number; readonly x: number; readonly y: number }
  | { readonly kind: "parallel"; readonly distanceMm: number; readonly makes: Makes };

interface EditStore {
  /** What is being asked for; undefined while nothing is. */
  readonly task: EditTask | undefined;
  /** What could not be done last, in words; gone at the next try. */
  readonly words: string | undefined;
  begin(task: EditTask): void;
  leave(): void;
  tell(words: string | undefined): void;
}

export const useEdit = create<EditStore>()((set) => {
  useView.subscribe((now, before) => {
    if (now.selection !== before.selection) set({ words: undefined });
    if (now.tool !== before.tool || now.stage !== before.stage) set({ task: undefined, words: undefined });
  });
  return {
    task: undefined,
    words: undefined,
    begin: (task) => set({ task, words: undefined }),
    leave: () => set({ task: undefined, words: undefined }),
    tell: (words) => set({ words }),
  };
});
