import type { PlacedLabel } from "./stage-of-look.ts";

/** The words on the picture: part codes, and stations along the ground. */
export function LookLabels({ labels }: { readonly labels: readonly PlacedLabel[] }) {
  return (
    <div className="look-labels" aria-hidden>
      {labels.map(({ key, word, kind, xPx, yPx }) => (
        <span
          key={key}
          className={`look-label ${kind}`}
          style={{ transform: `translate(${xPx.toFixed(1)}px, ${yPx.toFixed(1)}px) translate(-50%, -50%)` }}
        >
          {word}
        </span>
      ))}
    </div>
  );
}
