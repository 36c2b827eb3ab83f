import { ON_CENTRE_LINE_MM } from "../foundation/index.ts";
import type { Grip } from "./command-types.ts";
import { editItem, editOpening, editProfile } from "./edit-lines.ts";
import { mapKept } from "./map-kept.ts";
import { type Motion, moveInPlan, moveInSide } from "./motion.ts";
import { moveNodes } from "./move-nodes.ts";
import { linesOf, movesOf, placesOf, wholesOf } from "./node-moves.ts";
import { ownerKey } from "./owner-key.ts";
import type { Item, LineRef, Project } from "./schema.ts";
import { transformItem } from "./transform-item.ts";
import { sideDirection, withAngles, withOwnAngles } from "./turned-angles.ts";

/**
 * The document with things moved, turned, scaled or mirrored. Of a whole item or opening every node goes, with its
 * radii, typed tangents, wings and pivot; a fence's lower edge keeps standing under its line. A profile goes only
 * where it is named itself. Pieces that follow an edge stay with that edge. Of a node that is named alone only the
 * place changes.
 */
export function transformThings(project: Project, grips: readonly Grip[], motion: Motion): Project {
  const wholes = wholesOf(project, grips);
  const single = grips.flatMap(({ line, nodeId }) =>
    nodeId === undefined || wholes.has(ownerKey(line)) ? [] : movesOf(project, line, motion, nodeId),
  );
  const lines = [...wholes.values()].flatMap((line) => linesOf(project, line));
  const moved = moveNodes(project, [...single, ...lines.flatMap((line) => movesOf(project, line, motion))]);
  return [...wholes.values()].reduce((done, line) => transformRest(done, line, project, motion), moved);
}

/**
 * How far left of the centre line the things would come to lie, mm; zero where they do not, or where nothing is
 * mirrored. Only what lay on the right is looked at.
 */
export function leftOfCentreMm(project: Project, grips: readonly Grip[], motion: Motion): number {
  if (project.symmetry !== "mirrored") return 0;
  const wholes = wholesOf(project, grips);
  const lines = [
    ...[...wholes.values()].flatMap((line) => linesOf(project, line).map((one): Grip => ({ line: one }))),
    ...grips.filter(({ line, nodeId }) => nodeId !== undefined && !wholes.has(ownerKey(line))),
  ];
  const ys = lines.flatMap(({ line, nodeId }) =>
    placesOf(project, line).flatMap((node) => {
      const isAsked = node.view === "plan" && (nodeId === undefined || node.id === nodeId);
      return isAsked ? [moveInPlan(node.at, motion)[1]] : [];
    }),
  );
  const leastMm = Math.min(0, ...ys);
  return leastMm < -ON_CENTRE_LINE_MM ? -leastMm : 0;
}

/** What goes with the nodes of a whole: radii, tangents, lower edge, wings, pivot and heights. */
function transformRest(done: Project, line: LineRef, before: Project, motion: Motion): Project {
  if (line.of === "profile")
    return withBendsOfProfile(
      editProfile(done, line.profileId, (profile) => {
        const nodes = mapKept(profile.nodes, (node) => withOwnAngles(node, motion, sideDirection));
        return nodes === profile.nodes ? profile : { ...profile, nodes };
      }),
      line.profileId,
      motion,
    );
  if (line.of === "opening")
    return editOpening(done, line.openingId, (opening) => {
      const elements = mapKept(opening.outline.elements, (element) => withAngles(element, motion));
      return elements === opening.outline.elements
        ? opening
        : { ...opening, outline: { ...opening.outline, elements } };
    });
  const old = before.items.find(({ id }) => id === line.itemId);
  return old === undefined ? done : editItem(done, line.itemId, (item) => transformItem(item, old, motion));
}

/** The bends that sections have chosen a method for go with their profile. */
function withBendsOfProfile(done: Project, profileId: string, motion: Motion): Project {
  const items = mapKept(done.items, (item): Item => {
    if (item.kind !== "section" || item.profileId !== profileId || !item.bends) return item;
    const bends = item.bends.map((bend) => ({ ...bend, atMm: moveInSide([bend.atMm, 0], motion)[0] }));
    return { ...item, bends };
  });
  return items === done.items ? done : { ...done, items };
}
