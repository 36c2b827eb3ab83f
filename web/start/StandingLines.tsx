import { saveAsFile, useFiles, wordNotKept } from "../files/index.ts";
import "./standing-lines.css";

/** What the builder must know for as long as it lasts, above the work: another tab has it, or nothing is kept. */
export function StandingLines() {
  const hold = useFiles((files) => files.hold);
  const keeping = useFiles((files) => files.keeping);
  return (
    <>
      {hold === "elsewhere" ? (
        <p className="standing-line" role="status" data-testid="open-elsewhere">
          This tray is being worked on in another tab. Here you can look at it; close the other tab to work
          here.
        </p>
      ) : null}
      {keeping === "kept" ? null : (
        <p className="standing-line" role="status" data-testid="not-kept">
          {`Your changes are not kept on this device. ${wordNotKept(keeping)} They last as long as this page is open.`}
          <button type="button" data-testid="not-kept-save" onClick={saveAsFile}>
            Save as a file
          </button>
        </p>
      )}
    </>
  );
}
