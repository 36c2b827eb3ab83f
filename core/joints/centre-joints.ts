import type { LyingSheet } from "../surfaces/index.ts";
import { edgesOf, edgesWithId } from "./edge-places.ts";
import { meetAlong } from "./meet-along.ts";
import type { GlueLine, Meetings, SheetJoint } from "./sheet-joint.ts";
import type { SetBack } from "./types.ts";

/** An edge on the centre line lies on its own image; what is less is rounding. */
const ON_IMAGE_MM = 0.1;

/** The joints of right and left halves on the centre line: each half meets its own mirror image there. */
export function centreJoints(sheets: readonly LyingSheet[], glue: GlueLine): Meetings {
  const joints: SheetJoint[] = [];
  const setBacks: SetBack[] = [];
  for (const sheet of sheets) {
    if (sheet.hands.length !== 2) continue;
    const onCentre = edgesOf(sheet).filter(({ role }) => role === "centre");
    for (const edgeId of new Set(onCentre.map((edge) => edge.edgeId))) {
      const image = { sheet, edgeId, edges: edgesWithId(sheet, edgeId), isImage: true };
      const settings = { ...glue, toleranceMm: ON_IMAGE_MM, choiceOf: () => undefined };
      const met = meetAlong(sheet, edgeId, [image], settings);
      setBacks.push(met.setBack);
      joints.push(...met.joints.map((joint) => ({ ...joint, kind: "centre" as const })));
    }
  }
  return { joints, setBacks, problems: [] };
}
