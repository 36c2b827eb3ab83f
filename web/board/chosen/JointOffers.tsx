import { Link2, Unlink2 } from "lucide-react";
import type { ItemEdge, Project } from "../../../core/project/index.ts";
import { useLengths } from "../../controls/index.ts";
import { useDesign, useDocument } from "../../stores/index.ts";
import { wordEdge, wordItem } from "../../tools/index.ts";

type Joints = Project["joints"];

/** Edges of an item that lie on another's without following it: each with the offer to join them, or to let go again. */
export function JointOffers({ itemId }: { readonly itemId: string }) {
  const { show, showFine, unit } = useLengths();
  const project = useDocument((state) => state.project);
  const offers = useDesign((state) => state.design?.jointOffers);
  const { joints } = project;
  const change = (joined: Joints["joined"]) =>
    useDocument.getState().dispatch({ kind: "change-settings", changes: { joints: { ...joints, joined } } });
  const ownFirst = ({ first, second }: { readonly first: ItemEdge; readonly second: ItemEdge }) =>
    first.itemId === itemId ? ([first, second] as const) : ([second, first] as const);
  const isOwn = ({ first, second }: { readonly first: ItemEdge; readonly second: ItemEdge }) =>
    first.itemId === itemId || second.itemId === itemId;
  return (
    <>
      {(offers ?? []).filter(isOwn).map((offer) => {
        const [own, other] = ownFirst(offer);
        return (
          <p key={keyOf(offer)} className="offer">
            <span>
              {capital(wordEdge(project, own))} lies on {wordEdge(project, other)} of{" "}
              {wordItem(project, other.itemId)} for {show(offer.lengthMm)} {unit}, at most{" "}
              {showFine(offer.gapMm)} {unit} off.
            </span>
            <button
              type="button"
              title="Make a joint of them: bevels and set-back follow"
              data-testid={`join-${own.edgeId}`}
              onClick={() => change([...joints.joined, { first: offer.first, second: offer.second }])}
            >
              <Link2 aria-hidden />
              Join them
            </button>
          </p>
        );
      })}
      {joints.joined.filter(isOwn).map((pair) => {
        const [own, other] = ownFirst(pair);
        return (
          <p key={keyOf(pair)} className="offer">
            <span>
              {capital(wordEdge(project, own))} is joined to {wordEdge(project, other)} of{" "}
              {wordItem(project, other.itemId)}.
            </span>
            <button
              type="button"
              className="plain"
              title="Make no joint of them"
              data-testid={`unjoin-${own.edgeId}`}
              onClick={() => change(joints.joined.filter((each) => each !== pair))}
            >
              <Unlink2 aria-hidden />
              Let go
            </button>
          </p>
        );
      })}
    </>
  );
}

const keyOf = ({ first, second }: { readonly first: ItemEdge; readonly second: ItemEdge }): string =>
  [first.itemId, first.edgeId, second.itemId, second.edgeId].join("/");

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
