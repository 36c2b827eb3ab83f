import { useFiles } from "../files/index.ts";
import { StartPage } from "../start/index.ts";
import { App } from "./App.tsx";
import { NoticeDialog } from "./NoticeDialog.tsx";

/** The start page, or the work in hand. */
export function Page() {
  const place = useFiles((files) => files.place);
  if (place === "work") return <App />;
  return (
    <>
      <StartPage />
      <NoticeDialog />
    </>
  );
}
