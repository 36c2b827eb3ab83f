import type { LineRef } from "./command-types.ts";

/** A text that stands for the item, profile or opening whose line it is. */
export function ownerKey(line: LineRef): string {
  switch (line.of) {
    case "profile":
      return `profile/${line.profileId}`;
    case "opening":
      return `opening/${line.openingId}`;
    case "item":
    case "lower-edge":
    case "edge":
      return `item/${line.itemId}`;
  }
}
