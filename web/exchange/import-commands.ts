import type { FittedLine } from "../../core/exchange/index.ts";
import {
  type Command,
  newFence,
  newOpening,
  newProfile,
  newSection,
  type Project,
} from "../../core/project/index.ts";
import { itemIdsOf, newId, openingIdsOf, profileIdsOf } from "../tools/new-id.ts";
import type { Selection } from "../tools/types.ts";
import type { ImportKind } from "./plan-import.ts";

/** Height of the flat profile under a first imported section, mm. */
const FIRST_HEIGHT_MM = 60;
/** A new flat profile reaches past the outline by this. */
const PROFILE_SPARE_MM = 100;

/** The one command that adds an imported line to the tray, and what is chosen then. */
export function importCommand(
  project: Project,
  kind: ImportKind,
  line: FittedLine,
): { readonly command: Command; readonly selection: Selection } {
  const common = line.nodes.map(({ at: _, ...node }, i) => ({
    kind: "node" as const,
    id: `n${i + 1}`,
    ...node,
  }));
  const elements = line.nodes.map(({ at: [x, y] }, i) => ({
    ...common[i],
    kind: "node" as const,
    id: `n${i + 1}`,
    next: line.nodes[i]?.next ?? "line",
    x,
    y,
  }));
  const numberOf = (things: readonly { readonly number: number }[]) =>
    Math.max(0, ...things.map(({ number }) => number)) + 1;
  switch (kind) {
    case "profile": {
      const id = newId("p", profileIdsOf(project));
      const nodes = elements.map(({ y, ...node }) => ({ ...node, z: y }));
      return {
        command: { kind: "add-profile", profile: newProfile({ id, name: "Imported profile", nodes }) },
        selection: { kind: "profile", profileId: id },
      };
    }
    case "opening": {
      const id = newId("o", openingIdsOf(project));
      const number = numberOf(project.openings);
      const opening = newOpening({ id, number, name: `Opening ${number}`, elements, closed: true });
      return { command: { kind: "add-opening", opening }, selection: { kind: "opening", openingId: id } };
    }
    case "fence": {
      const id = newId("f", itemIdsOf(project));
      const number = numberOf(project.items.filter((item) => item.kind === "fence"));
      return {
        command: { kind: "add-fence", fence: newFence({ id, number, name: `Fence ${number}`, elements }) },
        selection: { kind: "item", itemId: id },
      };
    }
    case "section": {
      const id = newId("s", itemIdsOf(project));
      const number = numberOf(project.items.filter((item) => item.kind === "section"));
      const known = project.profiles[0]?.id;
      const profileId = known ?? newId("p", profileIdsOf(project));
      const section = newSection({
        id,
        number,
        name: `Section ${number}`,
        profileId,
        elements,
        closed: true,
      });
      const xs = elements.map(({ x }) => x);
      const flat = [Math.min(...xs) - PROFILE_SPARE_MM, Math.max(...xs) + PROFILE_SPARE_MM].map((x, i) => ({
        kind: "node" as const,
        id: `n${i + 1}`,
        x,
        z: FIRST_HEIGHT_MM,
        next: "line" as const,
      }));
      const profile = newProfile({ id: profileId, name: `Profile of Section ${number}`, nodes: flat });
      return {
        command: { kind: "add-section", section, ...(known ? {} : { profile }) },
        selection: { kind: "item", itemId: id },
      };
    }
  }
}
