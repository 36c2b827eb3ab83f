import { SideSettings } from "../settings/index.ts";
import { PagesAheadView } from "./PagesAheadView.tsx";
import { PaperSettings } from "./PaperSettings.tsx";
import { TitleBlockSettings } from "./TitleBlockSettings.tsx";

/** Templates and build book: the paper, the pages before they are made, and the files. */
export function PrintStage() {
  return (
    <div className="two-panes">
      <SideSettings summary="Paper and title block">
        <PaperSettings />
        <TitleBlockSettings />
      </SideSettings>
      <article className="pane">
        <PagesAheadView />
      </article>
    </div>
  );
}
