import { lazy, Suspense } from "react";
import { ClockRows } from "../clocks/index.ts";
import { DeedList, stageDeeds } from "../deeds/index.ts";
import { DescribedDialog } from "../describe/index.ts";
import { HatchPatterns } from "../drawings/index.ts";
import { GuideStrip } from "../guide/index.ts";
import { HelpCard } from "../help/index.ts";
import { useHistoryView } from "../history/index.ts";
import { stages } from "../stages/index.ts";
import { RefusalLine } from "../standing/index.ts";
import { StandingLines } from "../start/index.ts";
import { AMomentLater, useDocument, useView } from "../stores/index.ts";
import { FaultBoundary } from "./FaultBoundary.tsx";
import { KeyList } from "./KeyList.tsx";
import { NoticeDialog } from "./NoticeDialog.tsx";
import { TitleBar } from "./TitleBar.tsx";
import { TruthLine } from "./TruthLine.tsx";

/** Fetched when the steps are first looked at. */
const HistoryPanel = lazy(async () => ({
  default: (await import("../history/HistoryPanel.tsx")).HistoryPanel,
}));

/** Fetched when a line is first imported. */
const ImportDialog = lazy(async () => ({
  default: (await import("../exchange/ImportDialog.tsx")).ImportDialog,
}));

/** Fetched when the work goes to the bench. */
const BenchMode = lazy(async () => ({ default: (await import("../bench/index.ts")).BenchMode }));

/** The whole page: the title with the stages, the stage that is worked on, and the truth line. */
export function App() {
  const stage = useView((view) => view.stage);
  const overlay = useView((view) => view.overlay);
  const isHistoryShown = useHistoryView((view) => view.isShown);
  const generation = useDocument((state) => state.generation);
  const Stage = stages[stage];
  const { word } = stageDeeds[stage];
  return (
    <div className="app">
      <HatchPatterns />
      <TitleBar />
      <StandingLines />
      <GuideStrip />
      <div className="work">
        <main className="stage" aria-label={word} data-testid={`stage-view-${stage}`}>
          <h2 className="visually-hidden">{word}</h2>
          <FaultBoundary key={`${stage}/${generation}`}>
            <Suspense fallback={null}>
              <Stage />
            </Suspense>
          </FaultBoundary>
        </main>
        {isHistoryShown ? (
          <Suspense fallback={null}>
            <HistoryPanel />
          </Suspense>
        ) : null}
      </div>
      <RefusalLine />
      {overlay === "bench" ? null : <ClockRows />}
      <AMomentLater>
        <TruthLine />
      </AMomentLater>
      {overlay === "keys" ? <KeyList /> : null}
      {overlay === "deeds" ? <DeedList /> : null}
      <HelpCard />
      {overlay === "bench" ? (
        <FaultBoundary>
          <Suspense fallback={null}>
            <BenchMode />
          </Suspense>
        </FaultBoundary>
      ) : null}
      {overlay === "described" ? <DescribedDialog /> : null}
      {overlay === "import" ? (
        <Suspense fallback={null}>
          <ImportDialog />
        </Suspense>
      ) : null}
      <NoticeDialog />
    </div>
  );
}
