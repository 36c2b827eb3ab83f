import { type KeyboardEvent, useState } from "react";
import { Dialog } from "../controls/index.ts";
import { useView } from "../stores/index.ts";
import { allDeeds } from "./all-deeds.ts";
import { type Deed, DeedGroups } from "./deed.ts";
import { findDeeds } from "./find-deeds.ts";
import { KeyNames } from "./KeyNames.tsx";
import { isPossibleNow, wordNowOf } from "./use-possible.ts";
import "./deeds.css";

/** Everything that can be done, to be looked for by its words and done from here. */
export function DeedList() {
  const [typed, setTyped] = useState("");
  const [marked, setMarked] = useState(0);
  const close = () => useView.getState().setOverlay(undefined);
  const found = possibleFirst(findDeeds(allDeeds, typed).filter((deed) => deed.name !== "deeds"));
  const at = Math.min(marked, found.length - 1);
  const run = (deed: Deed | undefined) => {
    if (deed === undefined || !isPossibleNow(deed)) return;
    close();
    deed.run();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "ArrowDown") setMarked((at + 1) % Math.max(1, found.length));
    else if (event.key === "ArrowUp") setMarked((at - 1 + found.length) % Math.max(1, found.length));
    else if (event.key === "Enter") run(found[at]);
    else return;
    event.preventDefault();
  };
  return (
    <Dialog title="What can be done" testId="deed-list" onClose={close}>
      <input
        type="search"
        className="deed-search"
        aria-label="Look for something that can be done"
        aria-controls="deeds-found"
        aria-activedescendant={found[at] ? `found-${found[at].name}` : undefined}
        role="combobox"
        aria-expanded
        placeholder="mirror, fence, undo …"
        data-first
        value={typed}
        data-testid="deed-search"
        onChange={(event) => {
          setTyped(event.currentTarget.value);
          setMarked(0);
        }}
        onKeyDown={onKeyDown}
      />
      <div id="deeds-found" className="deeds-found" role="listbox" aria-label="What can be done">
        {found.map((deed, index) => (
          <FoundDeed key={deed.name} deed={deed} isMarked={index === at} onRun={() => run(deed)} />
        ))}
      </div>
      {found.length === 0 ? <p className="pencil">Nothing is called that. Try another word.</p> : null}
    </Dialog>
  );
}

const possibleFirst = (deeds: readonly Deed[]): readonly Deed[] => [
  ...deeds.filter(isPossibleNow),
  ...deeds.filter((deed) => !isPossibleNow(deed)),
];

interface FoundDeedProps {
  readonly deed: Deed;
  readonly isMarked: boolean;
  readonly onRun: () => void;
}

function FoundDeed({ deed, isMarked, onRun }: FoundDeedProps) {
  const Icon = deed.icon;
  const isPossible = isPossibleNow(deed);
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the search field hears the keys
    <div
      ref={(element) => {
        if (isMarked) element?.scrollIntoView({ block: "nearest" });
      }}
      id={`found-${deed.name}`}
      role="option"
      tabIndex={-1}
      className="found-deed"
      aria-selected={isMarked}
      aria-disabled={!isPossible}
      data-testid={`found-${deed.name}`}
      onClick={onRun}
    >
      <Icon aria-hidden />
      <span>
        {wordNowOf(deed)}
        <small>{deed.explains}</small>
      </span>
      <span className="pencil">{isPossible ? DeedGroups[deed.group] : "not now"}</span>
      <KeyNames names={deed.keys} />
    </div>
  );
}
