import { roundTo, toDegrees } from "../foundation/index.ts";
import { clothNameOn, lapRows, patchSize } from "../skins/index.ts";
import { type DataTable, mm } from "./data-table.ts";
import type { Design } from "./design.ts";

/** What is laid on the foam as tables: every patch of cloth, and the laps beside joints. */
export const skinDataTables = (design: Design): readonly DataTable[] => [
  patchesTable(design),
  lapsTable(design),
];

const patchesTable = ({ skins }: Design): DataTable => ({
  name: "patches",
  header: [
    "patch",
    "face",
    "part",
    "field",
    "session",
    "ply",
    "zone",
    "cloth",
    "warp deg",
    "along mm",
    "across mm",
    "area mm2",
  ],
  rows: skins.faces.flatMap((face) =>
    face.fields.flatMap((field) =>
      field.patches.map((patch) => {
        const { lengthMm, widthMm } = patchSize(patch);
        return [
          patch.id,
          face.face,
          patch.partId,
          field.id,
          face.sessions.findIndex(({ fieldIds }) => fieldIds.includes(field.id)) + 1,
          patch.ply,
          patch.zoneId ?? "",
          clothNameOn(face, patch.clothId),
          roundTo(toDegrees(patch.warpRad), 2),
          mm(lengthMm),
          mm(widthMm),
          mm(patch.areaMm2),
        ];
      }),
    ),
  ),
});

const lapsTable = ({ skins }: Design): DataTable => ({
  name: "laps",
  header: ["face", "joint", "ply", "first", "over", "on part", "begins mm", "lap mm", "room mm", "note"],
  rows: skins.faces.flatMap((face) =>
    lapRows(face).map(({ joint, ply, first, over, lies, note }, i) => {
      const { clearMm = 0, overlapMm = 0, roomMm = 0 } = face.laps[i] ?? {};
      return [face.face, joint, ply, first, over, lies, mm(clearMm), mm(overlapMm), mm(roomMm), note];
    }),
  ),
});
