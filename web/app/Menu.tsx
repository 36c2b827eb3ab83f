import { useRef } from "react";
import { Choice, TextField } from "../controls/index.ts";
import {
  accessDeeds,
  type Deed,
  exchangeDeeds,
  historyDeeds,
  trayDeeds,
  usePossible,
} from "../deeds/index.ts";
import { type Preferences, useDocument, usePreferences } from "../stores/index.ts";

export const MENU_ID = "tray-menu";

const MENU_DEEDS: readonly Deed[] = [
  trayDeeds.start,
  trayDeeds.new,
  trayDeeds.open,
  exchangeDeeds.import,
  trayDeeds.save,
  historyDeeds.snapshot,
];

/** Everything about the tray as a whole: its name, files, the way to the other trays, and how the page looks. */
export function Menu() {
  const menu = useRef<HTMLDivElement>(null);
  const title = useDocument((state) => state.project.title);
  const dispatch = useDocument((state) => state.dispatch);
  const { light, hand, units, prefer } = usePreferences();
  const close = () => menu.current?.hidePopover();
  return (
    <div ref={menu} id={MENU_ID} className="menu" popover="auto" data-testid="menu-panel">
      <TextField
        label="Name of the tray"
        value={title}
        mostLetters={60}
        testId="tray-title"
        onChange={(name) => dispatch({ kind: "change-settings", changes: { title: name } })}
      />
      <ul>
        {MENU_DEEDS.map((deed) => (
          <li key={deed.name}>
            <MenuButton deed={deed} onDone={close} />
          </li>
        ))}
      </ul>
      <h2 className="caption">To try</h2>
      <ul>
        {[trayDeeds.demo, trayDeeds.practice, accessDeeds.guide].map((deed) => (
          <li key={deed.name}>
            <MenuButton deed={deed} onDone={close} />
          </li>
        ))}
      </ul>
      <h2 className="caption">To look up</h2>
      <ul>
        {[trayDeeds.deeds, trayDeeds.keys].map((deed) => (
          <li key={deed.name}>
            <MenuButton deed={deed} onDone={close} />
          </li>
        ))}
      </ul>
      <h2 className="caption">This page</h2>
      <Choice
        label="Light"
        value={light}
        testId="light"
        options={[
          { value: "system", word: "As the device" },
          { value: "light", word: "Light" },
          { value: "dark", word: "Dark" },
        ]}
        onChange={(value: Preferences["light"]) => prefer({ light: value })}
      />
      <Choice
        label="Lengths on the board"
        value={units}
        testId="units"
        options={[
          { value: "mm", word: "Millimetres" },
          { value: "inch", word: "Inches and 1/16" },
        ]}
        onChange={(value: Preferences["units"]) => prefer({ units: value })}
      />
      <Choice
        label="Tools stand on the"
        value={hand}
        testId="hand"
        options={[
          { value: "right", word: "Left, for the right hand" },
          { value: "left", word: "Right, for the left" },
        ]}
        onChange={(value: Preferences["hand"]) => prefer({ hand: value })}
      />
    </div>
  );
}

function MenuButton({ deed, onDone }: { readonly deed: Deed; readonly onDone: () => void }) {
  const { isPossible, word } = usePossible(deed);
  const Icon = deed.icon;
  return (
    <button
      type="button"
      className="plain"
      title={deed.explains}
      disabled={!isPossible}
      data-testid={`menu-${deed.name}`}
      onClick={() => {
        onDone();
        deed.run();
      }}
    >
      <Icon aria-hidden />
      {word}
      <kbd>{deed.keys[0]}</kbd>
    </button>
  );
}
