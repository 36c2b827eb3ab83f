import type { SectionSheet } from "../surfaces/index.ts";
import { edgesOf } from "./edge-places.ts";
import { meetAlong, type Neighbour } from "./meet-along.ts";
import type { GlueLine, Meetings, SheetJoint } from "./sheet-joint.ts";
import type { SetBack } from "./types.ts";

/** The joints of right and left halves on the centre line: each half meets its own mirror image there. */
export function centreJoints(sections: readonly SectionSheet[], glue: GlueLine): Meetings {
  const joints: SheetJoint[] = [];
  const setBacks: SetBack[] = [];
  for (const sheet of sections) {
    if (sheet.hands.length !== 2) continue;
    const onCentre = edgesOf(sheet).filter(({ role }) => role === "centre");
    for (const edgeId of new Set(onCentre.map((edge) => edge.edgeId))) {
      const met = meetAlong(sheet, edgeId, imageOf(sheet), glue);
      setBacks.push(met.setBack);
      if (met.joint) joints.push({ ...met.joint, kind: "centre" });
    }
  }
  return { joints, setBacks, problems: [] };
}

const imageOf = (sheet: SectionSheet): Neighbour => ({
  sheet,
  isBeside: () => true,
  at: ({ z, normal }) => ({ z, normal: { ...normal, y: -normal.y } }),
});
