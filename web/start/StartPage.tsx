import { ArrowLeft } from "lucide-react";
import { useEffect } from "react";
import { goBackToWork, refreshWorks, useFiles, wordNotKept } from "../files/index.ts";
import { useDocument } from "../stores/index.ts";
import { Beginnings } from "./Beginnings.tsx";
import { DeletedWorks } from "./DeletedWorks.tsx";
import { StarterPanel } from "./StarterPanel.tsx";
import { WorkList } from "./WorkList.tsx";
import "./start.css";

/** What the builder can do when nothing is in hand: go on with a tray, open or look at one, or begin one. */
export function StartPage() {
  const works = useFiles((files) => files.works);
  const keeping = useFiles((files) => files.keeping);
  useKeptFresh();
  const kept = works.filter((work) => work.isOwn && work.deletedAtMs === undefined);
  const deleted = works.filter((work) => work.deletedAtMs !== undefined);
  return (
    <div className="start-page" data-testid="start-page">
      <header className="start-head">
        <h1>Traywright</h1>
        <p className="pencil">
          From the sketch of a car’s floor to foam sheets, ribs and patterns at true size.
        </p>
        <BackToWork />
      </header>
      <main className="start-body">
        {keeping === "kept" ? null : (
          <p className="start-warning" role="status" data-testid="start-not-kept">
            {`${wordNotKept(keeping)} You can work all the same: save each tray as a file before you close this page.`}
          </p>
        )}
        <div className="start-aside">
          {kept.length > 0 ? <WorkList works={kept} /> : null}
          <Beginnings />
          {deleted.length > 0 ? <DeletedWorks works={deleted} /> : null}
        </div>
        <StarterPanel />
      </main>
    </div>
  );
}

/** The way back to what is in hand. */
function BackToWork() {
  const slot = useFiles((files) => files.slot);
  const title = useDocument((state) => state.project.title);
  if (slot === undefined) return null;
  return (
    <button type="button" className="start-back" data-testid="start-back" onClick={goBackToWork}>
      <ArrowLeft aria-hidden />
      {`Back to ${title.trim() === "" ? "the tray without a name" : title}`}
    </button>
  );
}

/** Another tab may have changed what is kept while this page lay behind it. */
function useKeptFresh(): void {
  useEffect(() => {
    const refresh = () => void refreshWorks().catch(() => undefined);
    refresh();
    window.addEventListener("focus", refresh);
    return () => window.removeEventListener("focus", refresh);
  }, []);
}
