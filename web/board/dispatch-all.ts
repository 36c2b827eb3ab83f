import type { Command } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";

/** Several commands as one step back. */
export function dispatchAll(commands: readonly Command[]): void {
  const { dispatchInGesture, endGesture } = useDocument.getState();
  for (const command of commands) dispatchInGesture(command);
  endGesture();
}
