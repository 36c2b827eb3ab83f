import { Camera } from "lucide-react";
import { useFiles } from "../files/index.ts";
import { takeSnapshot } from "../history/index.ts";
import { useDocument } from "../stores/index.ts";
import type { Deed } from "./deed.ts";

/** What can be done with the tray as it is now and as it was. */
export const historyDeeds = {
  snapshot: {
    group: "tray",
    heard: "everywhere",
    name: "snapshot",
    word: "Take a snapshot",
    explains: "Keep the tray as it is now, under a name",
    icon: Camera,
    keys: ["Ctrl+Shift+S"],
    isPossible: () => !useDocument.getState().isReadOnly && useFiles.getState().slot !== undefined,
    run: () => void takeSnapshot(),
  },
} satisfies Record<string, Deed>;
