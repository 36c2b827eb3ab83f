import { at } from "../foundation/index.ts";
import type { Post } from "./board-types.ts";
import { heightOn, type JigPiece, type JigSettings, planPoint } from "./jig-piece.ts";

/** Posts stand so far inside a rib's ends, and so far apart at most, mm (common practice). */
const INSIDE_MM = 25;
const APART_MM = 250;
/** The slope of a post's top is taken over this on both sides, mm: half of a post of 40. */
const FEEL_MM = 20;

/**
 * Posts along the station planes of the ribs, for a builder who sets posts in place of ribs: under foam everywhere, with
 * the height at the middle and the slopes of the top, rearward and to the right, in the jig's own attitude.
 */
export function postsOf(pieces: readonly JigPiece[], settings: JigSettings): readonly Post[] {
  const spots = pieces.flatMap((piece) => {
    const [fromMm, toMm] = [at(piece.points, 0).atMm + INSIDE_MM, at(piece.points, -1).atMm - INSIDE_MM];
    if (toMm < fromMm) return [{ piece, alongMm: (fromMm + toMm) / 2 }];
    const bays = Math.max(1, Math.ceil((toMm - fromMm) / APART_MM));
    return Array.from({ length: bays + 1 }, (_, i) => ({
      piece,
      alongMm: fromMm + ((toMm - fromMm) * i) / bays,
    }));
  });
  const posts = spots.flatMap(({ piece, alongMm }) => postAt(piece, alongMm, settings));
  return posts.map((post, i) => ({ ...post, id: `${settings.stand === "jig" ? "" : "C"}Q${i + 1}` }));
}

function postAt(piece: JigPiece, alongMm: number, settings: JigSettings): readonly Omit<Post, "id">[] {
  const rest = piece.restAt(0, alongMm);
  if (rest === undefined) return [];
  const heightMm = heightOn(settings, rest.zMm);
  const slope = (offset: (mm: number) => readonly [number, number]): number => {
    const sides = [FEEL_MM, -FEEL_MM].flatMap((mm) => {
      const there = piece.restAt(...offset(mm));
      return there === undefined ? [] : [{ mm, v: heightOn(settings, there.zMm) }];
    });
    const [a, b] = sides;
    if (a === undefined) return 0;
    const far = b ?? { mm: 0, v: heightMm };
    return Math.atan2(a.v - far.v, a.mm - far.mm);
  };
  const besideRad = slope((mm) => [mm, alongMm]);
  const forwardRad = slope((mm) => [0, alongMm + mm]);
  const [slopeAlongRad, slopeAcrossRad] =
    piece.runs === "across" ? [besideRad, forwardRad] : [forwardRad, besideRad];
  return [
    {
      ribId: piece.id,
      at: planPoint(piece.runs, piece.atMm, alongMm),
      heightMm,
      slopeAlongRad,
      slopeAcrossRad,
      partId: rest.partId,
    },
  ];
}
