import { at, type FlatPoint } from "../foundation/index.ts";
import { drawnPlaceMm, type LiePast } from "../jig/index.ts";
import { type FlatToSpace, type Part, partPlaces } from "../patterns/index.ts";
import type { Design } from "./design.ts";
import { type LineMark, lineMark, toPaper } from "./marks.ts";

/** The direction in which foam runs on is taken over this, mm. */
const FEEL_MM = 0.5;

/** Where the station face of an outboard rib lies under the foam that runs past an edge: beyond the finished outline. */
export function outboardLines(
  design: Design,
  part: Part,
): readonly { readonly line: LineMark; readonly words: string }[] {
  const place = partPlaces(design.sheets, part);
  const sheet = design.sheets.find(({ id }) => id === part.sheetId);
  if (!place || !sheet || sheet.kind === "fence") return [];
  const isUpright = design.jig.baseboard.attitude === "upright";
  const depthMm = isUpright ? sheet.depths.coreLowerMm : sheet.depths.coreUpperMm;
  return design.lie.pasts.flatMap((past) => {
    const rib = design.jig.ribs.find(({ id }) => id === past.ribId);
    if (!rib || !past.partIds.includes(part.id)) return [];
    return edgesOf(part, past).map((points) => ({
      line: lineMark(
        points.map((flat) =>
          toPaper(movedOut(flat, { xMm: drawnPlaceMm(rib, design.jig), past, place, depthMm })),
        ),
        "hidden",
        "ribs",
      ),
      words: `rib ${rib.id}`,
    }));
  });
}

const edgesOf = ({ loops }: Part, { edgeIds }: LiePast): readonly (readonly FlatPoint[])[] =>
  loops
    .flatMap(({ edges }) => edges)
    .filter(({ edgeId }) => edgeIds.includes(edgeId))
    .map(({ points }) => [at(points, 0), ...points.slice(1)]);

interface Outboard {
  /** The plane of the rib, where the foam is as drawn. */
  readonly xMm: number;
  readonly past: LiePast;
  readonly place: FlatToSpace;
  readonly depthMm: number;
}

/** The point as far past an edge as the rib's plane is, along the foam, which goes on straight. */
function movedOut({ u, v }: FlatPoint, { xMm, past, place, depthMm }: Outboard): FlatPoint {
  const sense = past.toward === "last" ? 1 : -1;
  const [edge, inside] = [place({ u, v }, depthMm), place({ u: u - sense * FEEL_MM, v }, depthMm)];
  const way = { x: edge.x - inside.x, y: edge.y - inside.y, z: edge.z - inside.z };
  const lengthMm = Math.hypot(way.x, way.y, way.z);
  return { u: u + (sense * (xMm - edge.x) * lengthMm) / way.x, v };
}
