import { Lock, LockOpen, RotateCw } from "lucide-react";
import { type PointerEvent, useState } from "react";
import { formatMm } from "../../../core/foundation/index.ts";
import {
  changePiece,
  type LaidGroup,
  type LaidPiece,
  type PieceChange,
  seenLengthMm,
} from "../../../core/stock/index.ts";
import { Select } from "../../controls/index.ts";
import { boundsOf, middleOf } from "../../drawings/index.ts";
import { useSettings } from "../settings/index.ts";

interface LaidSheetProps {
  readonly group: LaidGroup;
  readonly index: number;
  readonly canEdit: boolean;
}

/** A piece in the hand: where the pointer took hold of it, and how far it has come, mm. */
interface Drag {
  readonly pieceId: string;
  readonly from: readonly [number, number];
  readonly by: readonly [number, number];
}

/** Arrow keys move a piece by this much, with Shift by ten times as much. */
const ARROW_MM = 1;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-ARROW_MM, 0],
  ArrowRight: [ARROW_MM, 0],
  ArrowUp: [0, ARROW_MM],
  ArrowDown: [0, -ARROW_MM],
};

/** One sheet with its pieces. Of an accepted layout pieces can be dragged, turned, locked and put on another sheet. */
export function LaidSheetView({ group, index, canEdit }: LaidSheetProps) {
  const { project, change } = useSettings();
  const [chosenId, setChosenId] = useState<string>();
  const [drag, setDrag] = useState<Drag>();
  const sheet = group.sheets[index];
  if (sheet === undefined) return null;
  const { lengthMm, widthMm, pieces } = sheet;
  const seenMm = seenLengthMm(sheet);
  const chosen = pieces.find(({ pieceId }) => pieceId === chosenId);
  const edit = (pieceId: string, changes: PieceChange) =>
    change({ layouts: changePiece(project.layouts, group.groupId, pieceId, changes) });
  const take = (event: PointerEvent<SVGElement>, piece: LaidPiece) => {
    setChosenId(piece.pieceId);
    const from = placeOf(event);
    if (!canEdit || piece.locked || from === undefined) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    setDrag({ pieceId: piece.pieceId, from, by: [0, 0] });
  };
  const move = (event: PointerEvent<SVGElement>) => {
    const to = placeOf(event);
    if (drag && to) setDrag({ ...drag, by: [to[0] - drag.from[0], to[1] - drag.from[1]] });
  };
  const drop = () => {
    if (drag && (drag.by[0] !== 0 || drag.by[1] !== 0)) edit(drag.pieceId, { by: drag.by });
    setDrag(undefined);
  };
  return (
    <li className="laid-sheet">
      <p className="pencil">{`Sheet ${index + 1}, ${formatMm(lengthMm)} × ${formatMm(widthMm)} mm`}</p>
      <svg
        viewBox={`-4 -4 ${seenMm + 8} ${widthMm + 8}`}
        role="group"
        aria-label={`Sheet ${index + 1}`}
        data-testid={`laid-sheet-${group.groupId}-${index}`}
      >
        <g transform={`matrix(1 0 0 -1 0 ${widthMm})`}>
          <rect className="board-edge" width={lengthMm} height={widthMm} />
          {sheet.cuts.map((cut, number) =>
            cut.kind === "straight" ? (
              <line
                key={number}
                className="straight-cut"
                x1={cut.from.x}
                y1={cut.from.y}
                x2={cut.to.x}
                y2={cut.to.y}
              />
            ) : null,
          )}
          {pieces.map((piece) => {
            const [byX, byY] = drag?.pieceId === piece.pieceId ? drag.by : [0, 0];
            return (
              <g
                key={piece.pieceId}
                className="laid-piece"
                role="button"
                tabIndex={0}
                aria-label={`${piece.pieceId}${piece.isWrong ? ", collides" : ""}${piece.locked ? ", locked" : ""}`}
                aria-pressed={piece.pieceId === chosenId}
                data-testid={`laid-${piece.pieceId}`}
                data-wrong={piece.isWrong}
                data-locked={piece.locked}
                transform={`translate(${byX} ${byY})`}
                onFocus={() => setChosenId(piece.pieceId)}
                onPointerDown={(event) => take(event, piece)}
                onPointerMove={move}
                onPointerUp={drop}
                onPointerCancel={() => setDrag(undefined)}
                onKeyDown={(event) => {
                  const by = ARROWS[event.key];
                  if (!by || !canEdit || piece.locked) return;
                  event.preventDefault();
                  event.stopPropagation();
                  const times = event.shiftKey ? 10 : 1;
                  edit(piece.pieceId, { by: [by[0] * times, by[1] * times] });
                }}
              >
                <path className="laid-outline" d={pathOfPiece(piece)} fillRule="evenodd" />
                <PieceCode piece={piece} />
              </g>
            );
          })}
        </g>
      </svg>
      {canEdit && chosen ? (
        <PieceButtons
          group={group}
          index={index}
          piece={chosen}
          onEdit={(one) => edit(chosen.pieceId, one)}
        />
      ) : null}
    </li>
  );
}

interface PieceButtonsProps {
  readonly group: LaidGroup;
  readonly index: number;
  readonly piece: LaidPiece;
  readonly onEdit: (change: PieceChange) => void;
}

function PieceButtons({ group, index, piece, onEdit }: PieceButtonsProps) {
  const [x, y] = middleOfPiece(piece);
  return (
    <div className="piece-buttons">
      <span className="code">{piece.pieceId}</span>
      <button
        type="button"
        className="plain"
        data-testid="lock-piece"
        onClick={() => onEdit({ locked: !piece.locked })}
      >
        {piece.locked ? <LockOpen aria-hidden /> : <Lock aria-hidden />}
        {piece.locked ? "Unlock its place" : "Lock its place"}
      </button>
      <button
        type="button"
        className="plain"
        disabled={piece.locked}
        onClick={() => onEdit({ halfTurnAbout: { x, y } })}
      >
        <RotateCw aria-hidden /> Turn end for end
      </button>
      {group.sheets.length > 1 && !piece.locked ? (
        <Select
          label="On sheet"
          value={String(index)}
          options={group.sheets.map((_, number) => ({ value: String(number), word: String(number + 1) }))}
          onChange={(number) => onEdit({ sheet: Number(number) })}
        />
      ) : null}
    </div>
  );
}

/** The pointer's place on the sheet, mm, y upward. */
function placeOf(event: PointerEvent<SVGElement>): readonly [number, number] | undefined {
  const group = event.currentTarget.parentElement;
  const matrix = group instanceof SVGGraphicsElement ? group.getScreenCTM() : undefined;
  if (!matrix) return undefined;
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
  return [x, y];
}

const pathOfPiece = ({ linesMm }: LaidPiece): string =>
  linesMm.map((loop) => `M${loop.map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).join("L")}Z`).join("");

function middleOfPiece({ linesMm }: LaidPiece): readonly [number, number] {
  const bounds = boundsOf(linesMm.flat().map(({ x, y }) => [x, y] as const));
  return bounds ? middleOf(bounds) : [0, 0];
}

function PieceCode({ piece }: { readonly piece: LaidPiece }) {
  const [x, y] = middleOfPiece(piece);
  return (
    <text className="laid-code" transform={`matrix(1 0 0 -1 ${x} ${y - 9})`} textAnchor="middle">
      {piece.pieceId}
    </text>
  );
}
