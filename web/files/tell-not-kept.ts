import { useFiles } from "./file-store.ts";

const REASONS = {
  full: "The device's storage is full.",
  closed: "The browser gives this page no storage.",
} as const;

/** Why nothing reaches this device's storage, in one sentence. */
export const wordNotKept = (keeping: "full" | "closed"): string => REASONS[keeping];

/**
 * Tells that a work could not be kept: in a line above the work for as long as that lasts, and in a dialog the first
 * time that there is something of the builder's to lose.
 */
export function tellNotKept(error: unknown, isOwn: boolean): void {
  const keeping = isFull(error) ? "full" : "closed";
  const { hasToldNotKept, tell } = useFiles.getState();
  useFiles.setState({ keeping });
  if (!isOwn || hasToldNotKept) return;
  useFiles.setState({ hasToldNotKept: true });
  tell({
    title: "The last change is not kept on this device",
    text: `${REASONS[keeping]} Save the tray as a file now, and again before you close this page.`,
    offers: "save as a file",
  });
}

const isFull = (error: unknown): boolean =>
  error instanceof DOMException && error.name === "QuotaExceededError";
