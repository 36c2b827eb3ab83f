import { create } from "zustand";

/** What goes on while a picture is read, and what is to be said of the one that was laid last. */
export interface LayingStore {
  readonly isReading: boolean;
  readonly told: { readonly underlayId: string; readonly words: string } | undefined;
}

export const useLaying = create<LayingStore>()(() => ({ isReading: false, told: undefined }));
