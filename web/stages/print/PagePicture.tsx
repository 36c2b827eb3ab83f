import { memo, useEffect, useRef, useState } from "react";
import type { DrawingPage, Mark, TextFace } from "../../../core/book/index.ts";
import type { PagesAhead } from "../../worker/index.ts";

type Pens = PagesAhead["pens"];

interface PagePictureProps {
  readonly page: DrawingPage;
  readonly pens: Pens;
}

/** The em square of each face, as a multiple of the height of its capitals. */
const EM_PER_CAPITAL: Readonly<Record<TextFace, number>> = {
  sans: 1 / 0.698,
  bold: 1 / 0.698,
  mono: 1 / 0.73,
};

/** One page as it will be printed, small; drawn when it comes into sight. Black on white, as paper is. */
export const PagePicture = memo(function PagePicture({ page, pens }: PagePictureProps) {
  const place = useRef<HTMLDivElement>(null);
  const [isSeen, see] = useState(false);
  useEffect(() => {
    if (!place.current) return;
    const watcher = new IntersectionObserver(
      (entries) => {
        if (entries.some((entry) => entry.isIntersecting)) see(true);
      },
      { rootMargin: "400px" },
    );
    watcher.observe(place.current);
    return () => watcher.disconnect();
  }, []);
  const { widthMm, heightMm, marks, name } = page;
  return (
    <div ref={place} className="page-picture" style={{ aspectRatio: `${widthMm} / ${heightMm}` }}>
      {isSeen ? (
        <svg viewBox={`0 ${-heightMm} ${widthMm} ${heightMm}`} role="img" aria-label={name}>
          {marks.map((mark, index) => (
            <MarkPicture key={index} mark={mark} pens={pens} />
          ))}
        </svg>
      ) : null}
    </div>
  );
});

function MarkPicture({ mark, pens }: { readonly mark: Mark; readonly pens: Pens }) {
  switch (mark.kind) {
    case "line":
      return <path d={pathOnPaper(mark)} fill={fillOf(mark.fill)} {...penOf(mark.style, pens)} />;
    case "circle":
      return (
        <circle
          cx={mark.centre.x}
          cy={-mark.centre.y}
          r={mark.radiusMm}
          fill="none"
          {...penOf(mark.style, pens)}
        />
      );
    case "text":
      return (
        <text
          className={`face-${mark.face}`}
          style={{ fontSize: `${mark.heightMm * EM_PER_CAPITAL[mark.face]}px` }}
          textAnchor={mark.anchor}
          transform={`translate(${mark.at.x} ${-mark.at.y}) rotate(${(-mark.turnRad * 180) / Math.PI})`}
        >
          {mark.text}
        </text>
      );
  }
}

function pathOnPaper({ points, closed }: Extract<Mark, { kind: "line" }>): string {
  const steps = points.map(
    ({ x, y }, index) => `${index === 0 ? "M" : "L"}${x.toFixed(2)} ${(-y).toFixed(2)}`,
  );
  return steps.join("") + (closed ? "Z" : "");
}

const fillOf = (fill: "ink" | "paper" | undefined): string =>
  fill === undefined ? "none" : fill === "ink" ? "#000" : "#fff";

function penOf(style: string, pens: Pens) {
  const pen = pens[style];
  return {
    stroke: "#000",
    strokeWidth: pen?.widthMm ?? 0.25,
    strokeDasharray: pen && pen.dashMm.length > 0 ? pen.dashMm.join(" ") : undefined,
  };
}
