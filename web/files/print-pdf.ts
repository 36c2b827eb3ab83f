/**
 * Opens the print dialog of the browser over a PDF, which lies in a frame that is not seen. Where the browser does not let
 * a page do that, the file is opened in a tab of its own, to be printed from there.
 */
export function printPdf(pdf: Blob): void {
  removeOld();
  const url = URL.createObjectURL(pdf);
  const frame = document.createElement("iframe");
  frame.id = FRAME_ID;
  frame.title = "Pages for the printer";
  frame.className = "printed-frame";
  frame.src = url;
  frame.addEventListener("load", () => {
    try {
      frame.contentWindow?.focus();
      frame.contentWindow?.print();
    } catch {
      window.open(url, "_blank");
    }
  });
  document.body.append(frame);
}

/** The frame of the last print has to stay for as long as its dialog is open: until the next one. */
function removeOld(): void {
  const old = document.getElementById(FRAME_ID);
  if (!(old instanceof HTMLIFrameElement)) return;
  URL.revokeObjectURL(old.src);
  old.remove();
}

const FRAME_ID = "printed-pages";
