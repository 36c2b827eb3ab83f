import { toDegrees, toRadians } from "../../../core/foundation/index.ts";
import type { ReinforcementZone } from "../../../core/project/index.ts";
import { NumberField, Select } from "../../controls/index.ts";
import type { NamedEdge } from "./use-free-edges.ts";

type Shape = ReinforcementZone["shape"];

interface ZoneShapeFieldsProps {
  readonly shape: Shape;
  readonly setting: string;
  readonly edges: readonly NamedEdge[];
  readonly onChange: (shape: Shape) => void;
}

const KINDS = [
  { value: "spot", word: "a round spot" },
  { value: "rectangle", word: "a rectangle" },
  { value: "band", word: "a band along an edge" },
] as const;

/** What a zone is and where: a round spot or a rectangle about a place in plan, or a band along an edge. */
export function ZoneShapeFields({ shape, setting, edges, onChange }: ZoneShapeFieldsProps) {
  const length = (label: string, value: number, key: string, change: (mm: number) => Shape) => (
    <NumberField
      key={key}
      label={label}
      unit="mm"
      value={value}
      setting={`${setting}.${key}`}
      onChange={(mm) => onChange(change(mm))}
    />
  );
  return (
    <>
      <Select
        label="It is"
        value={shape.kind}
        options={KINDS}
        onChange={(kind) => onChange(changedTo(kind, shape, edges))}
      />
      {shape.kind === "band" ? (
        <>
          <Select
            label="Edge"
            value={`${shape.itemId} ${shape.edgeId}`}
            options={edges}
            onChange={(value) => {
              const edge = edges.find((one) => one.value === value);
              if (edge) onChange({ ...shape, itemId: edge.itemId, edgeId: edge.edgeId });
            }}
          />
          {length("Wide", shape.widthMm, "widthMm", (widthMm) => ({ ...shape, widthMm }))}
        </>
      ) : (
        <>
          {length("Middle at x", shape.x, "x", (x) => ({ ...shape, x }))}
          {length("Middle at y", shape.y, "y", (y) => ({ ...shape, y }))}
        </>
      )}
      {shape.kind === "spot"
        ? length("Radius", shape.radiusMm, "radiusMm", (radiusMm) => ({ ...shape, radiusMm }))
        : null}
      {shape.kind === "rectangle" ? (
        <>
          {length("Long", shape.lengthMm, "lengthMm", (lengthMm) => ({ ...shape, lengthMm }))}
          {length("Wide", shape.widthMm, "widthMm", (widthMm) => ({ ...shape, widthMm }))}
          <NumberField
            label="Turned from forward"
            unit="°"
            decimals={0}
            value={toDegrees(shape.turnRad ?? 0)}
            onChange={(degrees) => onChange({ ...shape, turnRad: toRadians(degrees) })}
          />
        </>
      ) : null}
    </>
  );
}

/** A zone of another kind, where the one before lay. */
function changedTo(kind: string, shape: Shape, edges: readonly NamedEdge[]): Shape {
  const { x, y } = shape.kind === "band" ? { x: 500, y: 0 } : shape;
  const [edge] = edges;
  if (kind === "band" && edge) return { kind: "band", itemId: edge.itemId, edgeId: edge.edgeId, widthMm: 60 };
  if (kind === "rectangle") return { kind: "rectangle", x, y, lengthMm: 200, widthMm: 120 };
  return { kind: "spot", x, y, radiusMm: 80 };
}
