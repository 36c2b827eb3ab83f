import { describe, expect, it } from "vitest";
import { type DrawingPage, drawBook } from "../../../core/book/index.ts";
import { designTray } from "../../../core/design.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const wordsOf = ({ marks }: DrawingPage): string =>
  marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])).join(" ");

describe("scarfs on paper", () => {
  const demo = readExample("hill-climb-floor");
  const design = designTray({ ...demo, cutting: { ...demo.cutting, scarfRatio: 8 } });
  const { pages } = drawBook(design, readFonts());

  it("a spliced strip says how long its taper is, in which face, and how far out the line to cut by lies", () => {
    const words = pages
      .filter(({ name }) => name === "Strip S1-b")
      .map(wordsOf)
      .join(" ");
    expect(words).toContain("80.0 mm");
    expect(words).toContain("upper face");
    expect(words).toContain("lower face");
    expect(words.match(/\+40\.0/g)).toHaveLength(2);
    expect(words).toContain("Scarf: cut the edge square");
  });

  it("both tapers of a strip are drawn, the one in the face behind it dashed", () => {
    const marks = pages.filter(({ name }) => name === "Strip S1-b").flatMap((page) => page.marks);
    const styles = marks.flatMap((mark) =>
      mark.kind === "line" && mark.layer === "tapers" ? [mark.style] : [],
    );
    expect(styles.toSorted()).toEqual(["hidden", "thin"]);
  });
});
