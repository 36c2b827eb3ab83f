import type { Solid } from "../../core/solids/index.ts";
import type { SpaceBox } from "./camera.ts";

/** No tray is larger: what lies farther out is a drawing gone wrong, and is not gone after, mm. */
const FARTHEST_MM = 20_000;

/** The box around solids as they stand folded, down to the ground; a metre of ground where there are none. */
export function boxOfSolids(solids: readonly Pick<Solid, "positions">[]): SpaceBox {
  const axes = [0, 1, 2].map((axis) => {
    let [least, most] = [Infinity, -Infinity];
    for (const { positions } of solids) {
      for (let i = axis; i < positions.length; i += 3) {
        const value = positions[i] ?? 0;
        if (!(Math.abs(value) <= FARTHEST_MM)) continue;
        [least, most] = [Math.min(least, value), Math.max(most, value)];
      }
    }
    return { least, most };
  });
  const [x, y, z] = axes;
  if (!x || !y || !z || axes.some(({ least, most }) => least > most))
    return { least: { x: 0, y: -500, z: 0 }, most: { x: 1000, y: 500, z: 100 } };
  return {
    least: { x: x.least, y: y.least, z: Math.min(0, z.least) },
    most: { x: x.most, y: y.most, z: Math.max(0, z.most) },
  };
}
