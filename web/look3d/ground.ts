import { BufferGeometry, Color, Float32BufferAttribute, Group, LineBasicMaterial, LineSegments } from "three";
import type { SpaceBox } from "./camera.ts";

/** Station lines on the ground: thin ones every 100 mm, stronger ones every 500 mm and on the centre line. */
const STATION_MM = 100;
const STRONG_EACH = 5;
/** The ground goes on so far beyond the tray, mm. */
const MARGIN_MM = 200;

export interface Ground {
  readonly group: Group;
  /** Stations with a number, and where their lines end nearest to the drawing's lower edge. */
  readonly stations: readonly { readonly xMm: number; readonly yMm: number }[];
  readonly paint: (colours: { readonly thin: string; readonly strong: string }) => void;
  readonly dispose: () => void;
}

/** The ground plane under a tray, with its stations. Drawn first: seen from below, too, the tray stands before it. */
export function makeGround({ least, most }: SpaceBox): Ground {
  const from = { x: down(least.x - MARGIN_MM), y: down(least.y - MARGIN_MM) };
  const to = { x: -down(-most.x - MARGIN_MM), y: -down(-most.y - MARGIN_MM) };
  const [thin, strong]: [number[], number[]] = [[], []];
  const stations: { xMm: number; yMm: number }[] = [];
  for (let i = from.x; i <= to.x; i++) {
    const isStrong = i % STRONG_EACH === 0;
    (isStrong ? strong : thin).push(...line([i, from.y], [i, to.y]));
    if (isStrong) stations.push({ xMm: i * STATION_MM, yMm: from.y * STATION_MM });
  }
  for (let k = from.y; k <= to.y; k++) {
    (k % STRONG_EACH === 0 ? strong : thin).push(...line([from.x, k], [to.x, k]));
  }
  const layers = [thin, strong].map((spots) => {
    const geometry = new BufferGeometry().setAttribute("position", new Float32BufferAttribute(spots, 3));
    const material = new LineBasicMaterial({ depthTest: false, depthWrite: false });
    return { geometry, material, lines: new LineSegments(geometry, material) };
  });
  const group = new Group();
  for (const { lines } of layers) {
    lines.raycast = () => {};
    lines.renderOrder = -1;
    group.add(lines);
  }
  return {
    group,
    stations,
    paint: (colours) => {
      [colours.thin, colours.strong].forEach((colour, i) => {
        const layer = layers[i];
        if (layer) layer.material.color = new Color(colour);
      });
    },
    dispose: () => {
      for (const { geometry, material } of layers) for (const owned of [geometry, material]) owned.dispose();
    },
  };
}

const down = (mm: number): number => Math.floor(mm / STATION_MM);

const line = (a: readonly [number, number], b: readonly [number, number]): readonly number[] =>
  [a, b].flatMap(([x, y]) => [x * STATION_MM, y * STATION_MM, 0]);
