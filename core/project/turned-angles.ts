import { type Motion, stretchOf, turnedBy } from "./motion.ts";
import type { PlanElement } from "./schema.ts";

export const withAngles = (element: PlanElement, motion: Motion): PlanElement =>
  element.kind === "node" ? withOwnAngles(element, motion, turnedBy) : element;

/** Directions of the side view change only where it is mirrored in x. */
export const sideDirection = (angleRad: number, motion: Motion): number =>
  motion.kind === "mirror" && motion.across === "station" ? Math.PI - angleRad : angleRad;

interface Angled {
  readonly radiusMm?: number;
  readonly tangentInRad?: number;
  readonly tangentOutRad?: number;
}

export function withOwnAngles<T extends Angled>(
  node: T,
  motion: Motion,
  turn: (angleRad: number, motion: Motion) => number,
): T {
  const factor = stretchOf(motion);
  const sized =
    factor === 1 || node.radiusMm === undefined ? node : { ...node, radiusMm: node.radiusMm * factor };
  return motion.kind === "move" || motion.kind === "scale"
    ? sized
    : changedAngles(sized, (angleRad) => turn(angleRad, motion));
}

/** Typed directions within a turn either way, as they can be typed. */
export function changedAngles<T extends Angled>(node: T, change: (angleRad: number) => number): T {
  if (node.tangentInRad === undefined && node.tangentOutRad === undefined) return node;
  const within = (angleRad: number) => {
    const changed = change(angleRad);
    return Math.atan2(Math.sin(changed), Math.cos(changed));
  };
  return {
    ...node,
    ...(node.tangentInRad === undefined ? {} : { tangentInRad: within(node.tangentInRad) }),
    ...(node.tangentOutRad === undefined ? {} : { tangentOutRad: within(node.tangentOutRad) }),
  };
}
