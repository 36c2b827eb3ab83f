import { create } from "zustand";
import { ALL_SNAPS, type SnapSettings } from "../tools/snaps/snap-kinds.ts";
import type { Selection, ToolName } from "../tools/types.ts";

export type { Selection, ToolName } from "../tools/types.ts";

/** The stages of the work that exist, in their order. */
export const StageNames = ["draw", "sheets", "stock", "jig", "glue", "skin", "buy", "print"] as const;
export type StageName = (typeof StageNames)[number];

/** What the board shows: the middle of each view and one scale, so that plan and side view share the x axis. */
export interface Viewport {
  readonly centreXMm: number;
  readonly planCentreYMm: number;
  readonly sideCentreZMm: number;
  readonly pixelsPerMm: number;
}

/** The smallest and the largest scale that the board is seen at, px per mm. */
export const ScaleLimits = { least: 0.02, most: 20 } as const;

/** Dialogs and panels over the work; one at a time. */
export type Overlay = "import" | "keys" | "deeds" | "problems" | "menu" | "bench" | "described";

/** What a phone shows in the Draw stage: one view at a time. */
export type PhoneView = "drawing" | "parts" | "chosen";

/** How the parts are shown beside the drawing: laid flat, or as they stand in space. */
export type PartsShown = "flat" | "space";

/** How the work is looked at: never saved with the document, never undone. */
export interface ViewStore {
  readonly stage: StageName;
  readonly tool: ToolName;
  readonly selection: Selection | undefined;
  /** Station of the cross-section. */
  readonly hairlineXMm: number;
  readonly viewport: Viewport;
  /** Counts the wishes to see everything; the board fits its views when it changes. */
  readonly fitRequests: number;
  readonly snaps: SnapSettings;
  /** Whether a press with the Choose tool chooses one thing, or several one by one. */
  readonly choosing: "one" | "several";
  readonly overlay: Overlay | undefined;
  readonly phoneView: PhoneView;
  readonly partsShown: PartsShown;
  setStage(stage: StageName): void;
  setTool(tool: ToolName): void;
  select(selection: Selection | undefined): void;
  setHairline(hairlineXMm: number): void;
  setViewport(viewport: Viewport): void;
  requestFit(): void;
  /** Nearer or farther about the middle of each view. */
  zoomBy(factor: number): void;
  setSnaps(snaps: Partial<SnapSettings>): void;
  setChoosing(choosing: "one" | "several"): void;
  setOverlay(overlay: Overlay | undefined): void;
  setPhoneView(phoneView: PhoneView): void;
  showParts(partsShown: PartsShown): void;
}

export const useView = create<ViewStore>()((set) => ({
  stage: "draw",
  tool: "select",
  selection: undefined,
  hairlineXMm: 1000,
  viewport: { centreXMm: 1000, planCentreYMm: 0, sideCentreZMm: 100, pixelsPerMm: 0.35 },
  fitRequests: 0,
  snaps: ALL_SNAPS,
  choosing: "one",
  overlay: undefined,
  phoneView: "drawing",
  partsShown: "flat",
  setStage: (stage) => set({ stage }),
  setTool: (tool) => set({ tool }),
  select: (selection) => set({ selection }),
  setHairline: (hairlineXMm) => set({ hairlineXMm }),
  setViewport: (viewport) => set({ viewport }),
  requestFit: () => set(({ fitRequests }) => ({ fitRequests: fitRequests + 1 })),
  zoomBy: (factor) =>
    set(({ viewport }) => ({
      viewport: {
        ...viewport,
        pixelsPerMm: Math.min(ScaleLimits.most, Math.max(ScaleLimits.least, viewport.pixelsPerMm * factor)),
      },
    })),
  setSnaps: (snaps) => set((state) => ({ snaps: { ...state.snaps, ...snaps } })),
  setChoosing: (choosing) => set({ choosing }),
  setOverlay: (overlay) => set({ overlay }),
  setPhoneView: (phoneView) => set({ phoneView }),
  showParts: (partsShown) => set({ partsShown }),
}));
