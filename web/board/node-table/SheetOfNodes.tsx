import { ClipboardCopy } from "lucide-react";
import { type ClipboardEvent, type KeyboardEvent, type ReactNode, useState } from "react";
import type { LineRef } from "../../../core/project/index.ts";
import { useLengths } from "../../controls/index.ts";
import { useDocument } from "../../stores/index.ts";
import { isBlock, nodeTableOf, pasteBlock, readBlock, writeNodeTable } from "../../tools/index.ts";
import { dispatchAll } from "../dispatch-all.ts";
import { cellOf } from "./cell-marks.ts";
import { decimalSignOf } from "./decimal-sign.ts";
import "./node-table.css";

interface SheetOfNodesProps {
  readonly line: LineRef;
  readonly children: ReactNode;
}

/** A table of nodes that trades blocks of cells with a spreadsheet: pasted into the cell in hand, copied whole. */
export function SheetOfNodes({ line, children }: SheetOfNodesProps) {
  const lengths = useLengths();
  const [complaints, setComplaints] = useState<readonly string[]>([]);
  const [isCopied, setIsCopied] = useState(false);
  const onPaste = (event: ClipboardEvent<HTMLElement>) => {
    const place = cellOf(event.target);
    const text = event.clipboardData.getData("text/plain");
    setIsCopied(false);
    if (!place || !isBlock(text)) return setComplaints([]);
    event.preventDefault();
    const read = readBlock(text, lengths);
    const paste = read.ok ? pasteBlock(useDocument.getState().project, line, place, read.block) : read;
    setComplaints(paste.ok ? [] : paste.complaints);
    if (paste.ok && paste.commands.length > 0) dispatchAll(paste.commands);
  };
  const copy = async () => {
    const table = nodeTableOf(useDocument.getState().project, line);
    const text = writeNodeTable(table, lengths, decimalSignOf(navigator.language));
    const error = await navigator.clipboard.writeText(text).catch(() => "refused");
    setComplaints(
      error ? ["The browser did not let the table be copied; allow it to use the clipboard."] : [],
    );
    setIsCopied(!error);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLElement>) => {
    const isCopy = (event.ctrlKey || event.metaKey) && event.key.toLowerCase() === "c";
    if (!isCopy || isInCell(event.target)) return;
    event.preventDefault();
    event.stopPropagation();
    void copy();
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it hears what its cells and buttons let through
    <div className="sheet-of-nodes" data-units={lengths.units} onPaste={onPaste} onKeyDown={onKeyDown}>
      {children}
      {complaints.length > 0 ? (
        <ul className="paste-complaints" role="alert" data-testid="paste-complaints">
          {[...complaints, "Nothing was changed."].map((complaint) => (
            <li key={complaint}>{complaint}</li>
          ))}
        </ul>
      ) : null}
      <div className="sheet-deeds">
        <button
          type="button"
          className="plain"
          title="Copy all nodes for a spreadsheet (Ctrl+C on the table); a block of cells is pasted into a cell with Ctrl+V"
          data-testid="copy-table"
          onClick={() => void copy()}
        >
          <ClipboardCopy aria-hidden />
          Copy table
        </button>
        <span className="pencil" role="status">
          {isCopied ? "Copied." : ""}
        </span>
      </div>
    </div>
  );
}

/** A cell with a selection of its own copies that. */
const isInCell = (target: EventTarget): boolean => target instanceof HTMLInputElement;
