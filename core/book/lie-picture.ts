import { at, formatMm, formatNumber, MINUS } from "../foundation/index.ts";
import type { LieLine, LieStation } from "../jig/index.ts";
import type { Block } from "./blocks.ts";
import { boxMark, lineMark, paper, textMark } from "./marks.ts";
import { CONTENT_WIDTH_MM } from "./page-frame.ts";
import { thin } from "./thin-points.ts";
import type { Mark, PaperPoint } from "./types.ts";

/** The tolerance is drawn so large, whatever the scale of the picture. */
const TOLERANCE_PAPER_MM = 3;
const STRIP_MM = 6;
/** Lines across the strip stand so far apart where the foam is off by the tolerance; twice as far at half of it. */
const HATCH_MM = 0.7;
/** A number below the strip needs so much room. */
const NUMBER_MM = 9;
const MOST_HEIGHT_MM = 40;

/**
 * A line over the foam from the side: as drawn thin, as it lies thick and larger than it is, with its ribs; below it a strip
 * hatched the closer the farther the foam lies off, with the worst of every stretch in mm.
 */
export function liePicture(
  line: LieLine,
  toleranceMm: number,
): { readonly block: Block; readonly scale: number } {
  const { stations, ribsMm, ribIds, without } = line;
  const all = inOrder(line);
  const [first, last] = [at(all, 0), at(all, -1)];
  const lengthMm = last.alongMm - first.alongMm;
  const highestMm = Math.max(...all.map(({ heightMm }) => heightMm));
  const widthMm = CONTENT_WIDTH_MM - 8;
  const scale =
    [5, 10, 20, 50].find((one) => lengthMm / one <= widthMm && highestMm / one <= MOST_HEIGHT_MM) ?? 100;
  const pictureMm = highestMm / scale;
  const draw = (corner: PaperPoint): readonly Mark[] => {
    const base = corner.y - 8 - pictureMm;
    const spot = (alongMm: number, upMm: number) =>
      paper(corner.x + 4 + (alongMm - first.alongMm) / scale, base + upMm);
    const lying = ({ alongMm, heightMm, errorMm }: LieStation) =>
      spot(alongMm, heightMm / scale + (errorMm / toleranceMm) * TOLERANCE_PAPER_MM);
    return [
      lineMark(thin(stations.map(({ alongMm, heightMm }) => spot(alongMm, heightMm / scale))), "thin"),
      lineMark(thin(all.map(lying)), "outline"),
      ...(without.length > 0 ? [lineMark(thin(without.map(lying)), "hidden")] : []),
      ...trimMarks(line, (alongMm, heightMm, upMm) => spot(alongMm, heightMm / scale + upMm)),
      ...ribMarks({ ribsMm, ribIds, stations: all }, spot, scale),
      ...stripMarks(line, toleranceMm, (alongMm) => spot(alongMm, -12)),
    ];
  };
  return { block: { heightMm: pictureMm + 32, draw }, scale };
}

/** The stations of a line with those that run past its trim lines. */
const inOrder = ({ stations, past }: LieLine): readonly LieStation[] =>
  [...stations, ...past].toSorted((a, b) => a.alongMm - b.alongMm);

/** A short line where foam is trimmed off after the first skin. */
const trimMarks = (
  { stations, past }: LieLine,
  spotAt: (alongMm: number, heightMm: number, upMm: number) => PaperPoint,
): readonly Mark[] =>
  [at(stations, 0), at(stations, -1)]
    .filter((end, i) => past.some(({ alongMm }) => (i === 0 ? alongMm < end.alongMm : alongMm > end.alongMm)))
    .flatMap(({ alongMm, heightMm }) => [
      lineMark([spotAt(alongMm, heightMm, -4), spotAt(alongMm, heightMm, 5)], "thin"),
      textMark(spotAt(alongMm, heightMm, 6), "trim", { heightMm: 2.5, anchor: "middle" }),
    ]);

type SpotAt = (alongMm: number, upMm: number) => PaperPoint;

function ribMarks(
  { ribsMm, ribIds, stations }: Pick<LieLine, "ribsMm" | "ribIds" | "stations">,
  spot: SpotAt,
  scale: number,
): readonly Mark[] {
  let lastX = Number.NEGATIVE_INFINITY;
  return ribsMm.flatMap((alongMm, i): readonly Mark[] => {
    const near = stations.reduce((best, one) =>
      Math.abs(one.alongMm - alongMm) < Math.abs(best.alongMm - alongMm) ? one : best,
    );
    const foot = spot(alongMm, 0);
    const hasRoom = foot.x - lastX > NUMBER_MM;
    if (hasRoom) lastX = foot.x;
    return [
      lineMark([foot, spot(alongMm, near.heightMm / scale)], "thin", "ribs"),
      ...(hasRoom
        ? [
            textMark(paper(foot.x, foot.y - 3.5), at(ribIds, i), {
              heightMm: 2.5,
              face: "mono",
              anchor: "middle",
            }),
          ]
        : []),
    ];
  });
}

function stripMarks(
  { stations, ribsMm }: LieLine,
  toleranceMm: number,
  spotAt: (alongMm: number) => PaperPoint,
): readonly Mark[] {
  const [firstMm, lastMm] = [at(stations, 0).alongMm, at(stations, -1).alongMm];
  const borders = [firstMm, ...ribsMm.filter((mm) => mm > firstMm && mm < lastMm), lastMm];
  const corner = spotAt(at(stations, 0).alongMm);
  const end = spotAt(at(stations, -1).alongMm);
  const marks: Mark[] = [boxMark(corner, end.x - corner.x, STRIP_MM, "thin")];
  let owed = 0;
  for (const [i, station] of stations.slice(1).entries()) {
    const before = at(stations, i);
    const [x, to] = [spotAt(before.alongMm).x, spotAt(station.alongMm).x];
    const share = Math.min(1, (Math.abs(before.errorMm) + Math.abs(station.errorMm)) / 2 / toleranceMm);
    owed += ((to - x) * share) / HATCH_MM;
    for (let k = 1; owed >= 1; k++) {
      owed -= 1;
      const mark = Math.min(to, x + k * (share > 0 ? HATCH_MM / share : 0));
      marks.push(lineMark([paper(mark, corner.y), paper(mark, corner.y + STRIP_MM)], "thin"));
    }
  }
  let lastX = Number.NEGATIVE_INFINITY;
  for (const [i, toMm] of borders.slice(1).entries()) {
    const fromMm = at(borders, i);
    const own = stations.filter(({ alongMm }) => alongMm >= fromMm - 1e-6 && alongMm <= toMm + 1e-6);
    const x = (spotAt(fromMm).x + spotAt(toMm).x) / 2;
    marks.push(
      lineMark([paper(spotAt(toMm).x, corner.y), paper(spotAt(toMm).x, corner.y + STRIP_MM)], "outline"),
    );
    if (own.length === 0 || x - lastX < NUMBER_MM) continue;
    lastX = x;
    const worst = own.reduce((best, one) => (Math.abs(one.errorMm) > Math.abs(best.errorMm) ? one : best));
    marks.push(
      textMark(paper(x, corner.y - 3.2), signedMm(worst.errorMm), {
        heightMm: 2.5,
        face: "mono",
        anchor: "middle",
      }),
    );
  }
  return marks;
}

/** `+0.4`, `−1.2`, `0.0`. */
export function signedMm(mm: number): string {
  const size = formatMm(Math.abs(mm));
  if (size === formatNumber(0, 1)) return size;
  return mm < 0 ? `${MINUS}${size}` : `+${size}`;
}
