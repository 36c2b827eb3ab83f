import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import type { Vec2 } from "../../core/foundation/index.ts";
import { checkRemarks, type Note, nameOfNote, pinPlace, type ViewPoint } from "../../core/project/index.ts";
import { useDocument, useView } from "../stores/index.ts";
import type { DrawingView, Sight, ToolEvent } from "../tools/index.ts";
import "./notes.css";

/** Where a view lies on the board, and how its mm become px. */
interface ViewOnBoard {
  readonly box: {
    readonly leftPx: number;
    readonly topPx: number;
    readonly widthPx: number;
    readonly heightPx: number;
  };
  readonly transform: {
    readonly originXPx: number;
    readonly originYPx: number;
    readonly pxPerMmAcross: number;
    readonly pxPerMmUp: number;
  };
}

interface NotesProps {
  readonly plan: ViewOnBoard;
  readonly side: ViewOnBoard;
  readonly sight: Sight;
  readonly hear: (event: ToolEvent) => void;
}

/** A letter of 2.5 mm on paper is one of 14 px on the screen. */
const PX_PER_PAPER_MM = 5.6;

/** Notes over the drawing, each with its leader to its pin; a new one is typed where it stands. */
export function Notes({ plan, side, sight, hear }: NotesProps) {
  const project = useDocument((state) => state.project);
  const notes = checkRemarks(project).notes;
  const draft = sight.note;
  const views: readonly (readonly [DrawingView, ViewOnBoard])[] = [
    ["plan", plan],
    ["side", side],
  ];
  return views.map(([view, onBoard]) => (
    <div
      key={view}
      className="notes-of-view"
      style={{
        left: onBoard.box.leftPx,
        top: onBoard.box.topPx,
        width: onBoard.box.widthPx,
        height: onBoard.box.heightPx,
      }}
    >
      {notes.map((note) => {
        const pin = note.view === view ? pinPlace(project, note) : undefined;
        return pin ? <PinnedNote key={note.id} {...{ note, pin, onBoard }} /> : null;
      })}
      {draft?.view === view ? <NewNote draft={draft} onBoard={onBoard} hear={hear} /> : null}
    </div>
  ));
}

function PinnedNote({
  note,
  pin,
  onBoard,
}: {
  readonly note: Note;
  readonly pin: ViewPoint;
  readonly onBoard: ViewOnBoard;
}) {
  const selection = useView((view) => view.selection);
  const grip = useRef<{ readonly px: Vec2; readonly leader: ViewPoint }>(undefined);
  const isChosen = selection?.kind === "note" && selection.noteId === note.id;
  const { dispatchInGesture, endGesture } = useDocument.getState();
  const { pxPerMmAcross, pxPerMmUp } = onBoard.transform;
  const grasp = (event: PointerEvent<HTMLElement>) => {
    event.stopPropagation();
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { px: [event.clientX, event.clientY], leader: note.leader };
  };
  const pull = (event: PointerEvent<HTMLElement>) => {
    event.stopPropagation();
    const held = grip.current;
    if (!held) return;
    const leader = {
      x: held.leader.x + (event.clientX - held.px[0]) / pxPerMmAcross,
      up: held.leader.up - (event.clientY - held.px[1]) / pxPerMmUp,
    };
    dispatchInGesture({ kind: "change-note", noteId: note.id, changes: { leader } });
  };
  const drop = (event: PointerEvent<HTMLElement>) => {
    event.stopPropagation();
    grip.current = undefined;
    endGesture();
  };
  const text = placeOf(onBoard, { x: pin.x + note.leader.x, up: pin.up + note.leader.up });
  return (
    <>
      <Leader from={placeOf(onBoard, pin)} to={text} />
      <button
        type="button"
        className="plain note"
        aria-pressed={isChosen}
        aria-label={nameOfNote(note)}
        data-testid={`note-${note.id}`}
        style={{ left: text[0], top: text[1], width: note.widthMm * PX_PER_PAPER_MM }}
        onPointerDown={grasp}
        onPointerMove={pull}
        onPointerUp={drop}
        onPointerCancel={drop}
        onClick={() => useView.getState().select({ kind: "note", noteId: note.id })}
      >
        {note.text}
      </button>
    </>
  );
}

function NewNote({
  draft,
  onBoard,
  hear,
}: {
  readonly draft: NonNullable<Sight["note"]>;
  readonly onBoard: ViewOnBoard;
  readonly hear: (event: ToolEvent) => void;
}) {
  const isLeft = useRef(false);
  const { at, leader, widthMm } = draft;
  const text = placeOf(onBoard, { x: at.x + leader.x, up: at.up + leader.up });
  const onKeyDown = (event: KeyboardEvent<HTMLTextAreaElement>) => {
    event.stopPropagation();
    if (event.key === "Escape") {
      isLeft.current = true;
      hear({ kind: "cancel" });
    } else if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) event.currentTarget.blur();
  };
  return (
    <>
      <Leader from={placeOf(onBoard, at)} to={text} />
      <textarea
        className="note"
        aria-label="Words of the note"
        // biome-ignore lint/a11y/noAutofocus: the pin has been set, and the words are asked for now
        autoFocus
        rows={3}
        maxLength={500}
        data-testid="note-words"
        style={{ left: text[0], top: text[1], width: widthMm * PX_PER_PAPER_MM }}
        onPointerDown={(event) => event.stopPropagation()}
        onPointerUp={(event) => event.stopPropagation()}
        onKeyDown={onKeyDown}
        onBlur={(event) => {
          if (!isLeft.current) hear({ kind: "write", text: event.currentTarget.value });
        }}
      />
    </>
  );
}

const Leader = ({ from, to }: { readonly from: Vec2; readonly to: Vec2 }) => (
  <svg className="note-leader" aria-hidden="true">
    <line x1={from[0]} y1={from[1]} x2={to[0]} y2={to[1]} />
    <circle cx={from[0]} cy={from[1]} r={3} />
  </svg>
);

/** A place of the view, px from the upper left corner of its box. */
const placeOf = ({ box, transform }: ViewOnBoard, { x, up }: ViewPoint): Vec2 => [
  transform.originXPx + x * transform.pxPerMmAcross - box.leftPx,
  transform.originYPx - up * transform.pxPerMmUp - box.topPx,
];
