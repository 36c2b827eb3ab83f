import { stages } from "../stages/index.ts";
import { useView } from "../stores/index.ts";
import { TitleBar } from "./TitleBar.tsx";
import { TruthLine } from "./TruthLine.tsx";

/** The whole page: the title with the stages, the stage that is worked on, and the truth line. */
export function App() {
  const Stage = stages[useView((view) => view.stage)].Stage;
  return (
    <div className="app">
      <TitleBar />
      <main className="stage">
        <Stage />
      </main>
      <TruthLine />
    </div>
  );
}
