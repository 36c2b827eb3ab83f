import { ChevronDown } from "lucide-react";
import { accessDeeds, DeedButton, trayDeeds } from "../deeds/index.ts";
import { useDocument } from "../stores/index.ts";
import { MENU_ID, Menu } from "./Menu.tsx";
import { StageStrip } from "./StageStrip.tsx";

/** Name of the tray with its menu, the strip of stages, and what takes changes back. */
export function TitleBar() {
  const title = useDocument((state) => state.project.title);
  return (
    <header className="title-bar">
      <button
        type="button"
        className="plain tray-name"
        data-testid="menu"
        popoverTarget={MENU_ID}
        title="New, open, save, and how this page looks"
      >
        <h1>{title.trim() === "" ? "Tray without a name" : title}</h1>
        <ChevronDown aria-hidden />
        <span className="visually-hidden">Menu</span>
      </button>
      <Menu />
      <StageStrip />
      <div className="title-actions">
        <DeedButton deed={trayDeeds.undo} />
        <DeedButton deed={trayDeeds.redo} />
        <DeedButton deed={trayDeeds.steps} />
        <DeedButton deed={accessDeeds.bench} wordless />
        <DeedButton deed={trayDeeds.deeds} />
      </div>
    </header>
  );
}
