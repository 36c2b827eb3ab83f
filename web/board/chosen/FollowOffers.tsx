import { Link2 } from "lucide-react";
import { nodeLabel } from "../../../core/foundation/index.ts";
import { useScene } from "../../hand/index.ts";
import { useDocument } from "../../stores/index.ts";
import { followOffers } from "../../tools/index.ts";
import { dispatchAll } from "../dispatch-all.ts";

/** Edges that lie along another item's edge, each with the offer to follow it: then they are stored once. */
export function FollowOffers({ itemId }: { readonly itemId: string }) {
  const project = useDocument((state) => state.project);
  const offers = followOffers(project, useScene(), itemId);
  return offers.map((offer) => (
    <p key={offer.afterNodeId} className="offer">
      Between node {nodeLabel(offer.afterNodeId)} and node {nodeLabel(offer.beforeNodeId)} the edge lies along{" "}
      {offer.otherName}.
      <button
        type="button"
        title="Let this edge follow the other: moving that one then moves both"
        data-testid={`follow-${offer.afterNodeId}`}
        onClick={() => dispatchAll(offer.commands)}
      >
        <Link2 aria-hidden />
        Follow it
      </button>
    </p>
  ));
}
