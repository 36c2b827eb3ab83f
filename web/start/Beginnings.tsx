import { FilePlus2, FolderOpen, type LucideIcon, Shapes } from "lucide-react";
import { askForFile, openExample, startNew } from "../files/index.ts";
import { PracticeOffer } from "../guide/index.ts";

interface Beginning {
  readonly name: string;
  readonly word: string;
  readonly explains: string;
  readonly icon: LucideIcon;
  readonly run: () => void;
}

const BEGINNINGS: readonly Beginning[] = [
  {
    name: "new",
    word: "Empty sheet",
    explains: "Draw a tray from nothing.",
    icon: FilePlus2,
    run: startNew,
  },
  {
    name: "open",
    word: "Open a file",
    explains: "A project file from this device.",
    icon: FolderOpen,
    run: askForFile,
  },
  {
    name: "demo",
    word: "Look at the demo",
    explains: "The floor of a hill-climb car, finished.",
    icon: Shapes,
    run: () => void openExample("hill-climb-floor"),
  },
];

/** The ways to a tray that ask for no numbers. */
export function Beginnings() {
  return (
    <section className="beginnings" aria-labelledby="beginnings-title">
      <h2 id="beginnings-title" className="caption">
        Other ways to begin
      </h2>
      <PracticeOffer />
      <ul>
        {BEGINNINGS.map(({ name, word, explains, icon: Icon, run }) => (
          <li key={name}>
            <button type="button" className="plain" data-testid={`start-${name}`} onClick={run}>
              <Icon aria-hidden />
              <span>
                <span className="beginning-word">{word}</span>
                <span className="pencil">{explains}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
