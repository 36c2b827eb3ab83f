import { boundsOfLoops } from "./loop-bounds.ts";
import type { MappedLap, MappedPatch } from "./map-types.ts";
import { areaMm2, islandsOf, overlapOf } from "./polygons.ts";

/** Less is two edges that lie on each other, mm². */
const LEAST_MM2 = 100;

/** Where two patches of one ply lie over each other. */
export function lapsBetween(patches: readonly MappedPatch[]): readonly MappedLap[] {
  const boxes = patches.map(({ loopsMm }) => boundsOfLoops(loopsMm));
  return patches.flatMap((one, i) =>
    patches.slice(i + 1).flatMap((other, k): readonly MappedLap[] => {
      const [a, b] = [boxes[i], boxes[i + 1 + k]];
      if (!a || !b || a.right < b.left || b.right < a.left || a.top < b.bottom || b.top < a.bottom) return [];
      const both = overlapOf(one.loopsMm.map(asFlat), other.loopsMm.map(asFlat));
      const loops = islandsOf(both)
        .filter((island) => areaMm2(island) > LEAST_MM2)
        .flat();
      if (loops.length === 0) return [];
      return [
        {
          patchIds: [one.patchId, other.patchId],
          areaMm2: areaMm2(loops),
          isOnCured: one.session !== other.session,
          loopsMm: loops.map((loop) => loop.map(({ u, v }) => ({ x: u, y: v }))),
        },
      ];
    }),
  );
}

const asFlat = (loop: MappedPatch["loopsMm"][number]) => loop.map(({ x, y }) => ({ u: x, v: y }));
