import { Dialog } from "../controls/index.ts";
import { saveAsFile, useFiles } from "../files/index.ts";

/** Tells what went wrong with a file or with keeping it; the work behind it is as it was. */
export function NoticeDialog() {
  const notice = useFiles((files) => files.notice);
  const tell = useFiles((files) => files.tell);
  const slot = useFiles((files) => files.slot);
  if (notice === undefined) return null;
  const close = () => tell(undefined);
  const offersFile = notice.offers === "save as a file";
  return (
    <Dialog
      title={notice.title}
      testId="notice"
      onClose={close}
      foot={
        <>
          <button
            type="button"
            className={offersFile ? "" : "primary"}
            data-testid="notice-close"
            onClick={close}
          >
            {slot === undefined ? "Go on" : "Go on with the present tray"}
          </button>
          {offersFile ? (
            <button
              type="button"
              className="primary"
              data-testid="notice-save"
              onClick={() => {
                saveAsFile();
                close();
              }}
            >
              Save as a file
            </button>
          ) : null}
        </>
      }
    >
      <p>{notice.text}</p>
      {slot === undefined ? null : <p className="pencil">The tray you are working on is as it was.</p>}
    </Dialog>
  );
}
