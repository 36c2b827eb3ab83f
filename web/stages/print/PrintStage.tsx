import { PagesAheadView } from "./PagesAheadView.tsx";
import { PaperSettings } from "./PaperSettings.tsx";
import { TitleBlockSettings } from "./TitleBlockSettings.tsx";

/** Templates and build book: the paper, the pages before they are made, and the files. */
export function PrintStage() {
  return (
    <div className="two-panes">
      <div className="side-settings">
        <PaperSettings />
        <TitleBlockSettings />
      </div>
      <article className="pane">
        <PagesAheadView />
      </article>
    </div>
  );
}
