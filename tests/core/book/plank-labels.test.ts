import { describe, expect, it } from "vitest";
import { boxesOverlap, boxOf, textCorners } from "../../../core/book/boxes.ts";
import { readLettering } from "../../../core/book/lettering.ts";
import { stripLabels } from "../../../core/book/strip-labels.ts";
import { stripPiece } from "../../../core/book/strip-piece.ts";
import { designTray } from "../../../core/design.ts";
import { edgeMarks } from "../../../core/marking/index.ts";
import { readExample } from "../../read-example.ts";
import { readFonts } from "../../read-fonts.ts";

const design = designTray(readExample("hill-climb-floor"));
const planks = design.strips.filter(({ id }) => ["S3-b", "S3-c", "S3-d"].includes(id));

describe("the template of a plank 23 mm wide", () => {
  it.each(planks.map((strip) => [strip.id, strip] as const))(
    "%s has its words inside it, clear of each other",
    (_id, strip) => {
      const part = design.parts.find(({ id }) => id === strip.partId);
      if (part === undefined) throw new Error("no part");
      const piece = stripPiece(design, strip, part);
      const lettering = readLettering(readFonts());
      const room = {
        piece,
        lettering,
        avoid: [],
        marks: edgeMarks(design).filter(({ stripId }) => stripId === strip.id),
      };
      const words = stripLabels(design, strip, part, room).flatMap((mark) =>
        mark.kind === "text" ? [{ text: mark.text, box: boxOf(textCorners(mark, lettering)) }] : [],
      );
      const whole = boxOf(piece.loops.flat());
      const own = words.filter(
        ({ text }) => [strip.id, "forward"].includes(text) || text.startsWith("upper face up"),
      );
      expect(own).toHaveLength(3);
      for (const { text, box } of own) {
        expect(box.left, text).toBeGreaterThan(whole.left);
        expect(box.right, text).toBeLessThan(whole.right);
        for (const other of words)
          if (other.box !== box)
            expect(boxesOverlap(box, other.box), `${text} over ${other.text}`).toBe(false);
      }
    },
  );
});
