import {
  AmbientLight,
  Color,
  DirectionalLight,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from "three";
import type { Solid } from "../../core/solids/index.ts";
import type { Paint } from "../board/index.ts";
import { type Body, makeBody } from "./body.ts";
import { boxOfSolids } from "./box-of-solids.ts";
import { type Camera, eyeOf, VIEW_RAD } from "./camera.ts";
import { type Ground, makeGround } from "./ground.ts";

/** What the look shows besides the solids. */
export interface LookState {
  readonly camera: Camera;
  /** 1 folded, 0 flat; of the chosen part only, or of all. */
  readonly bend: number;
  readonly bends: "all" | "chosen";
  readonly apart: number;
  /** The level that the tray is turned over to, mm; undefined where it lies as in the car. */
  readonly turnedAtMm: number | undefined;
  readonly isChosen: (solid: Solid) => boolean;
  readonly tintOf: (solid: Solid) => number;
  readonly paint: Paint;
}

/** A word at a place of the picture, px from its upper left. */
export interface PlacedLabel {
  readonly key: string;
  readonly word: string;
  readonly kind: "part" | "chosen" | "station";
  readonly xPx: number;
  readonly yPx: number;
}

/** The stage on which the tray stands: draws on request, never by itself. */
export interface LookStage {
  readonly setSolids: (solids: readonly Solid[]) => void;
  readonly setSize: (widthPx: number, heightPx: number) => void;
  /** Draws, and answers where the words belong. */
  readonly draw: (state: LookState) => readonly PlacedLabel[];
  readonly partAt: (xPx: number, yPx: number) => Solid | undefined;
  readonly dispose: () => void;
}

/** The stage on a canvas; undefined where the browser has no WebGL. */
export function makeStage(canvas: HTMLCanvasElement): LookStage | undefined {
  const renderer = rendererOn(canvas);
  if (!renderer) return undefined;
  const scene = new Scene();
  const eye = new PerspectiveCamera((VIEW_RAD * 180) / Math.PI, 1, 10, 100_000);
  eye.up.set(0, 0, 1);
  const lamp = new DirectionalLight(0xffffff, 1.5);
  scene.add(new AmbientLight(0xffffff, 1.75), lamp, lamp.target);
  let bodies: readonly Body[] = [];
  let ground: Ground | undefined;
  let size = { widthPx: 1, heightPx: 1 };

  const clear = () => {
    for (const body of bodies) {
      scene.remove(body.group);
      body.dispose();
    }
    if (ground) scene.remove(ground.group);
    ground?.dispose();
  };
  return {
    setSolids: (solids) => {
      clear();
      bodies = solids.map(makeBody);
      ground = makeGround(boxOfSolids(solids));
      scene.add(ground.group, ...bodies.map(({ group }) => group));
    },
    setSize: (widthPx, heightPx) => {
      size = { widthPx: Math.max(1, widthPx), heightPx: Math.max(1, heightPx) };
      renderer.setPixelRatio(Math.min(2, devicePixelRatio));
      renderer.setSize(size.widthPx, size.heightPx, false);
      eye.aspect = size.widthPx / size.heightPx;
      eye.updateProjectionMatrix();
    },
    draw: (state) => {
      renderer.setClearColor(new Color(state.paint.sheet));
      ground?.paint({ thin: state.paint.grid, strong: state.paint.rule });
      for (const body of bodies) show(body, state);
      lookFrom(eye, lamp, state.camera);
      renderer.render(scene, eye);
      return labelsOf(
        bodies.filter((body) => state.isChosen(body.solid) || isSeen(body, bodies, eye)),
        {
          ground,
          isChosen: state.isChosen,
          toPicture: (spot) => onPicture(spot, eye, size),
        },
      );
    },
    partAt: (xPx, yPx) => {
      const caster = new Raycaster();
      const [x, y] = [(2 * xPx) / size.widthPx - 1, 1 - (2 * yPx) / size.heightPx];
      caster.setFromCamera(new Vector2(x, y), eye);
      const [hit] = caster.intersectObjects(bodies.map(({ faces }) => faces));
      return bodies.find(({ faces }) => faces === hit?.object)?.solid;
    },
    dispose: () => {
      clear();
      renderer.dispose();
    },
  };
}

function rendererOn(canvas: HTMLCanvasElement): WebGLRenderer | undefined {
  // Asked for first, so that a browser without it is not complained about.
  const context = canvas.getContext("webgl2", { antialias: true, alpha: false });
  return context ? new WebGLRenderer({ canvas, context, antialias: true }) : undefined;
}

/** How much of its tint a part has over the sheet. */
const TINTED = 0.5;
const CHOSEN = 0.42;
/** How much of the pencil a ruling has: it is there, but an edge is stronger. */
const RULED = 0.4;

function show(body: Body, { bend, bends, apart, turnedAtMm, isChosen, tintOf, paint }: LookState): void {
  const chosen = isChosen(body.solid);
  body.bend(bends === "all" || chosen ? bend : 1);
  body.stand(apart, turnedAtMm);
  const tint = paint.tints[tintOf(body.solid) - 1] ?? paint.pencil;
  const metal = body.solid.kind === "plate" || body.solid.kind === "rib" ? paint.rule : tint;
  const fill = chosen ? mixed(paint.sheet, paint.mark, CHOSEN) : mixed(paint.sheet, metal, TINTED);
  body.paint({
    fill,
    line: chosen ? paint.mark : paint.ink,
    lineWidthPx: chosen ? 2.25 : 1.25,
    ruling: mixed(fill, paint.pencil, RULED),
  });
}

const mixed = (a: string, b: string, share: number): string =>
  `#${new Color(a).lerp(new Color(b), share).getHexString()}`;

/** The lamp stands over the eye's left shoulder, so that the shade of a face tells how it leans. */
function lookFrom(eye: PerspectiveCamera, lamp: DirectionalLight, camera: Camera): void {
  const { x, y, z } = eyeOf(camera);
  const { target } = camera;
  eye.near = Math.max(5, camera.distanceMm / 50);
  eye.far = camera.distanceMm + 30_000;
  eye.position.set(x, y, z);
  eye.lookAt(target.x, target.y, target.z);
  eye.updateProjectionMatrix();
  eye.updateMatrixWorld();
  const left = new Vector3(-0.5, 0.6, 0.4).applyQuaternion(eye.quaternion);
  lamp.position
    .set(x, y, z)
    .sub(new Vector3(target.x, target.y, target.z))
    .normalize()
    .add(left);
  lamp.position.add(lamp.target.position);
}

/** Whether nothing else stands before the middle of a body. */
function isSeen(body: Body, bodies: readonly Body[], eye: PerspectiveCamera): boolean {
  const way = body.middle().sub(eye.position);
  const caster = new Raycaster(eye.position, way.clone().normalize(), 0, way.length());
  const [hit] = caster.intersectObjects(bodies.map(({ faces }) => faces));
  return hit === undefined || hit.object === body.faces;
}

type ToPicture = (spot: Vector3) => { readonly xPx: number; readonly yPx: number } | undefined;

function onPicture(
  spot: Vector3,
  eye: PerspectiveCamera,
  { widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number },
): ReturnType<ToPicture> {
  const { x, y, z } = spot.clone().project(eye);
  if (Math.abs(z) > 1 || Math.abs(x) > 1 || Math.abs(y) > 1) return undefined;
  return { xPx: ((x + 1) / 2) * widthPx, yPx: ((1 - y) / 2) * heightPx };
}

/** Words nearer to each other than this would cover each other: the later one gives way, or is left out. */
const WORD_WIDTH_PX = 40;
const WORD_HEIGHT_PX = 18;

function labelsOf(
  bodies: readonly Body[],
  {
    ground,
    isChosen,
    toPicture,
  }: {
    readonly ground: Ground | undefined;
    readonly isChosen: LookState["isChosen"];
    readonly toPicture: ToPicture;
  },
): readonly PlacedLabel[] {
  const ordered = [...bodies].sort((a, b) => Number(isChosen(b.solid)) - Number(isChosen(a.solid)));
  const wishes = [
    ...ordered
      .filter(({ solid }) => solid.id === solid.partId)
      .map((body) => ({
        key: body.solid.id,
        word: body.solid.partId,
        kind: isChosen(body.solid) ? ("chosen" as const) : ("part" as const),
        spot: body.middle(),
      })),
    ...(ground?.stations ?? []).map(({ xMm, yMm }) => ({
      key: `station ${xMm}`,
      word: String(xMm),
      kind: "station" as const,
      spot: new Vector3(xMm, yMm, 0),
    })),
  ];
  const placed: PlacedLabel[] = [];
  for (const { spot, ...label } of wishes) {
    const at = toPicture(spot);
    if (!at) continue;
    const isFree = (aside: number) =>
      !placed.some(
        ({ xPx, yPx }) =>
          Math.abs(xPx - at.xPx - aside) < WORD_WIDTH_PX && Math.abs(yPx - at.yPx) < WORD_HEIGHT_PX,
      );
    const aside = (label.kind === "station" ? [0] : [0, WORD_WIDTH_PX, -WORD_WIDTH_PX]).find(isFree);
    if (aside !== undefined) placed.push({ ...label, ...at, xPx: at.xPx + aside });
  }
  return placed;
}
