import { sayNode } from "../../../core/foundation/index.ts";
import type { Candidate } from "./candidate.ts";
import { otherLines, type SnapRequest } from "./snap-request.ts";

/** Nodes of other lines. A node dropped on another of its own line would leave a segment without length. */
export const nodeCandidates = (request: SnapRequest): readonly Candidate[] =>
  otherLines(request).flatMap((line) =>
    line.nodes.flatMap(({ nodeId, at }): readonly Candidate[] =>
      isNear(at, request)
        ? [
            {
              at,
              reasons: [`${sayNode(nodeId)} of ${line.name}`],
              signs: [{ kind: "nodes", at }],
              handicapPx: 0,
            },
          ]
        : [],
    ),
  );

/** Most nodes are far away: one look at each axis. */
const isNear = (at: readonly [number, number], { place }: SnapRequest): boolean =>
  Math.abs(at[0] - place.at[0]) <= place.reachPx * place.mmPerPx[0] &&
  Math.abs(at[1] - place.at[1]) <= place.reachPx * place.mmPerPx[1];
