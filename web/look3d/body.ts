import {
  BufferAttribute,
  BufferGeometry,
  Color,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  Vector3,
} from "three";
import { LineMaterial } from "three/addons/lines/LineMaterial.js";
import { LineSegments2 } from "three/addons/lines/LineSegments2.js";
import { LineSegmentsGeometry } from "three/addons/lines/LineSegmentsGeometry.js";
import { bendSolid, type Solid } from "../../core/solids/index.ts";

/** The colours of one body. */
export interface BodyPaint {
  readonly fill: string;
  readonly line: string;
  readonly lineWidthPx: number;
  readonly ruling: string;
}

/** One solid on the screen: its faces and its drawn edges. */
export interface Body {
  readonly solid: Solid;
  readonly group: Group;
  readonly faces: Mesh<BufferGeometry, MeshLambertMaterial>;
  readonly bend: (share: number) => void;
  /** Away from the others by a share; turned over about its long axis where a level is given that comes to lie on the ground. */
  readonly stand: (apart: number, turnedAtMm: number | undefined) => void;
  readonly paint: (paint: BodyPaint) => void;
  /** The middle of the body as it stands now. */
  readonly middle: () => Vector3;
  readonly dispose: () => void;
}

/** Makes the body of a solid. Faces lie a little deeper than the lines on them, so that every line is whole. */
export function makeBody(solid: Solid): Body {
  const geometry = new BufferGeometry();
  geometry.setAttribute("position", new BufferAttribute(solid.positions.slice(), 3));
  geometry.setIndex(new BufferAttribute(solid.triangles, 1));
  const material = new MeshLambertMaterial({
    flatShading: true,
    polygonOffset: true,
    polygonOffsetFactor: 0.5,
    polygonOffsetUnits: 1,
  });
  const faces = new Mesh(geometry, material);
  const edges = new LineSegmentsGeometry();
  const edgeMaterial = new LineMaterial({ linewidth: 1 });
  const lines = new LineSegments2(edges, edgeMaterial);
  lines.raycast = () => {};
  const bends = new BufferGeometry()
    .setAttribute("position", geometry.getAttribute("position"))
    .setIndex(new BufferAttribute(solid.rulings, 1));
  const bendMaterial = new LineBasicMaterial();
  const rulings = new LineSegments(bends, bendMaterial);
  rulings.raycast = () => {};
  // The points move with the faces; what is in sight is told by the faces alone.
  rulings.frustumCulled = false;
  const group = new Group();
  group.add(faces, lines, rulings);
  let [bentBy, middle] = [1, middleOf(solid.positions)];

  const place = (positions: Float32Array) => {
    const attribute = geometry.getAttribute("position");
    attribute.array.set(positions);
    attribute.needsUpdate = true;
    geometry.computeBoundingSphere();
    geometry.computeBoundingBox();
    edges.setPositions(ends(solid.outline, positions));
    middle = middleOf(positions);
  };
  place(solid.positions);
  return {
    solid,
    group,
    faces,
    bend: (share) => {
      if (share === bentBy) return;
      bentBy = share;
      place(bendSolid(solid, share));
    },
    stand: (share, turnedAtMm) => {
      const { x, y, z } = solid.apart;
      const turn = turnedAtMm === undefined ? 1 : -1;
      group.rotation.x = turnedAtMm === undefined ? 0 : Math.PI;
      group.position.set(x * share, turn * y * share, turn * z * share + (turnedAtMm ?? 0));
      group.updateMatrixWorld();
    },
    paint: ({ fill, line, lineWidthPx, ruling }) => {
      bendMaterial.color = new Color(ruling);
      material.color = new Color(fill);
      edgeMaterial.color = new Color(line);
      edgeMaterial.linewidth = lineWidthPx;
    },
    middle: () => group.localToWorld(middle.clone()),
    dispose: () => {
      for (const owned of [geometry, material, edges, edgeMaterial, bends, bendMaterial]) owned.dispose();
    },
  };
}

/** Both ends of every line, three numbers each. */
function ends(outline: Uint32Array, positions: Float32Array): Float32Array {
  const spots = new Float32Array(outline.length * 3);
  outline.forEach((vertex, i) => {
    spots.set(positions.subarray(3 * vertex, 3 * vertex + 3), 3 * i);
  });
  return spots;
}

function middleOf(positions: Float32Array): Vector3 {
  const least = new Vector3(Infinity, Infinity, Infinity);
  const most = new Vector3(-Infinity, -Infinity, -Infinity);
  const spot = new Vector3();
  for (let i = 0; i < positions.length; i += 3) {
    spot.fromArray(positions, i);
    least.min(spot);
    most.max(spot);
  }
  return least.add(most).multiplyScalar(0.5);
}
