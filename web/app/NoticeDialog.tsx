import { Dialog } from "../controls/index.ts";
import { useFiles } from "../files/index.ts";

/** Tells what went wrong with a file; the work behind it is as it was. */
export function NoticeDialog() {
  const notice = useFiles((files) => files.notice);
  const tell = useFiles((files) => files.tell);
  if (notice === undefined) return null;
  return (
    <Dialog
      title={notice.title}
      testId="notice"
      onClose={() => tell(undefined)}
      foot={
        <button type="button" className="primary" data-testid="notice-close" onClick={() => tell(undefined)}>
          Go on with the present tray
        </button>
      }
    >
      <p>{notice.text}</p>
      <p className="pencil">The tray you are working on is as it was.</p>
    </Dialog>
  );
}
