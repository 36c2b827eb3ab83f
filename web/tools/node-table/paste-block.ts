import {
  applyCommand,
  type Command,
  type LineRef,
  type Project,
  type SideNode,
  type SpaceNode,
} from "../../../core/project/index.ts";
import { newId, takenIds } from "../new-id.ts";
import { moveNodeCommands } from "../select/index.ts";
import { type NodeColumn, type NodeTable, type NodeTableRow, nodeTableOf } from "./node-table.ts";
import type { Block } from "./read-block.ts";

/** The cell that a block is laid on with its upper left corner. */
export interface PastePlace {
  readonly nodeId: string;
  readonly column: NodeColumn;
}

/** The commands that lay a block down, all one step back; or why it cannot be laid there. */
export type Paste =
  | { readonly ok: true; readonly commands: readonly Command[] }
  | { readonly ok: false; readonly complaints: readonly string[] };

/**
 * Lays a block of lengths over the table of a line. Rows past the last node add nodes there, as long as the block
 * gives them both coordinates; an empty cell leaves what is there. Nothing is changed where any of it does not fit.
 */
export function pasteBlock(project: Project, line: LineRef, place: PastePlace, block: Block): Paste {
  const table = nodeTableOf(project, line);
  const first = table.rows.findIndex(({ id }) => id === place.nodeId);
  const column = table.columns.indexOf(place.column);
  if (first < 0 || column < 0) return { ok: false, complaints: ["That node is no longer there."] };
  const complaints = complaintsOf(table, { first, column }, block);
  if (complaints.length > 0) return { ok: false, complaints };
  const commands: Command[] = [];
  let now = project;
  const carryOut = (more: readonly Command[]) => {
    commands.push(...more);
    now = more.reduce(applyCommand, now);
  };
  for (const [index, cells] of block.entries()) {
    const row = table.rows[first + index];
    const values = table.columns.map((_, at) => cells[at - column] ?? row?.values?.[at]);
    carryOut(row ? changeRow(now, line, { table, row, values }) : addRow(now, line, table, values));
  }
  return { ok: true, commands };
}

interface Corner {
  readonly first: number;
  readonly column: number;
}

function complaintsOf(
  { columns, rows }: NodeTable,
  { first, column }: Corner,
  block: Block,
): readonly string[] {
  const widest = Math.max(...block.map((cells) => cells.length));
  if (column + widest > columns.length) {
    const has = columns.length - column;
    return [
      `${widest} columns were pasted; from ${columns[column]} on the table has ${has}. Choose a cell further left, or copy fewer.`,
    ];
  }
  return block.flatMap((cells, index) => {
    const row = rows[first + index];
    if (row && row.values === undefined) {
      return [`Row ${index + 1} would fall on an edge that follows another; let it go first.`];
    }
    const placed = columns.slice(0, columns.includes("radius") ? -1 : undefined);
    const lacks = row ? [] : placed.filter((_, at) => cells[at - column] === undefined);
    return lacks.length > 0
      ? [`Row ${index + 1} would be a new node, and has no ${lacks.join(" and no ")}.`]
      : [];
  });
}

interface RowChange {
  readonly table: NodeTable;
  readonly row: NodeTableRow;
  readonly values: readonly (number | undefined)[];
}

function changeRow(project: Project, line: LineRef, { table, row, values }: RowChange): readonly Command[] {
  const inColumn = (name: NodeColumn) => values[table.columns.indexOf(name)] ?? 0;
  const isChanged = (name: NodeColumn) => {
    const at = table.columns.indexOf(name);
    return at >= 0 && !isSame(values[at], row.values?.[at]);
  };
  const radiusMm = values[table.columns.indexOf("radius")];
  return [
    ...moves(project, line, { row, isChanged, inColumn }),
    ...(isChanged("radius")
      ? [
          {
            kind: "change-node" as const,
            line,
            nodeId: row.id,
            changes: { radiusMm: radiusMm !== undefined && radiusMm > 0 ? radiusMm : undefined },
          },
        ]
      : []),
  ];
}

/** A table that was copied and pasted back has lost the digits behind this, and moves nothing. */
const UNCHANGED_MM = 1e-4;

const isSame = (one: number | undefined, other: number | undefined): boolean =>
  one === other || Math.abs((one ?? Number.NaN) - (other ?? Number.NaN)) < UNCHANGED_MM;

interface Asked {
  readonly row: NodeTableRow;
  readonly isChanged: (name: NodeColumn) => boolean;
  readonly inColumn: (name: NodeColumn) => number;
}

function moves(project: Project, line: LineRef, { row, isChanged, inColumn }: Asked): readonly Command[] {
  const nodeId = row.id;
  const move = (to: readonly [number, number]): Command => ({ kind: "move-node", line, nodeId, to });
  if (isChanged("along") || isChanged("depth")) return [move([inColumn("along"), inColumn("depth")])];
  if (line.of === "edge") {
    const inPlan = { ...line, view: "plan" as const };
    const inSide = { ...line, view: "side" as const };
    return [
      ...(isChanged("x") || isChanged("y")
        ? [{ kind: "move-node" as const, line: inPlan, nodeId, to: [inColumn("x"), inColumn("y")] as const }]
        : []),
      ...(isChanged("z")
        ? [{ kind: "move-node" as const, line: inSide, nodeId, to: [inColumn("x"), inColumn("z")] as const }]
        : []),
    ];
  }
  if (line.of === "item") {
    return isChanged("x") || isChanged("y")
      ? moveNodeCommands(project, line, nodeId, [inColumn("x"), inColumn("y")])
      : [];
  }
  const up = line.of === "opening" ? "y" : "z";
  return isChanged("x") || isChanged(up) ? [move([inColumn("x"), inColumn(up)])] : [];
}

function addRow(
  project: Project,
  line: LineRef,
  { columns }: NodeTable,
  values: readonly (number | undefined)[],
): readonly Command[] {
  const inColumn = (name: NodeColumn) => values[columns.indexOf(name)] ?? 0;
  const radiusMm = values[columns.indexOf("radius")];
  const radius = radiusMm !== undefined && radiusMm > 0 ? { radiusMm } : {};
  if (columns.includes("depth")) return addDepth(project, line, inColumn("along"), inColumn("depth"));
  const id = newId("n", takenIds(project, line));
  const node = { id, x: inColumn("x"), next: "line" as const, ...radius };
  if (line.of === "edge") {
    const inSpace: SpaceNode = { ...node, y: inColumn("y"), z: inColumn("z") };
    return [{ kind: "append-node", line, node: inSpace }];
  }
  const drawn = { ...node, kind: "node" as const };
  const placed = columns.includes("y")
    ? { ...drawn, y: inColumn("y") }
    : ({ ...drawn, z: inColumn("z") } satisfies SideNode);
  return [{ kind: "append-node", line, node: placed }];
}

function addDepth(project: Project, line: LineRef, alongMm: number, depthMm: number): readonly Command[] {
  const fence = line.of === "lower-edge" ? project.items.find(({ id }) => id === line.itemId) : undefined;
  if (fence?.kind !== "fence" || fence.lowerEdge.kind !== "depths") return [];
  const { nodes } = fence.lowerEdge;
  const id = newId(
    "d",
    nodes.map((node) => node.id),
  );
  const lowerEdge = { kind: "depths", nodes: [...nodes, { id, alongMm, depthMm }] } as const;
  return [{ kind: "change-fence", itemId: fence.id, changes: { lowerEdge } }];
}
