import { Eye, EyeOff, Lock, LockOpen } from "lucide-react";
import { standingOf, type ThingRef } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import { setStanding } from "./set-standing.ts";
import "./standing.css";

interface StandingSwitchesProps {
  readonly thing: ThingRef;
  readonly name: string;
  /** In a row of a list the icons stand alone, in a panel with their words. */
  readonly look: "icons" | "words";
}

/** Two switches for a drawn thing: locked against change, and hidden on the board. */
export function StandingSwitches({ thing, name, look }: StandingSwitchesProps) {
  const project = useDocument((state) => state.project);
  const { locked, hidden } = standingOf(project, thing);
  const [LockIcon, EyeIcon] = [locked ? Lock : LockOpen, hidden ? EyeOff : Eye];
  const words = (word: string, label: string) =>
    look === "words" ? word : <span className="visually-hidden">{label}</span>;
  return (
    <span className="standing-switches" data-look={look}>
      <button
        type="button"
        className="plain"
        aria-pressed={locked}
        title={locked ? `Unlock ${name}` : `Lock ${name}, so that it cannot be changed`}
        data-testid={`lock-${idOf(thing)}`}
        onClick={() => setStanding([thing], locked ? "unlocked" : "locked")}
      >
        <LockIcon aria-hidden />
        {words(locked ? "Locked" : "Lock", `Lock ${name}`)}
      </button>
      <button
        type="button"
        className="plain"
        aria-pressed={hidden}
        title={hidden ? `Show ${name}` : `Hide ${name} on the board; it is still made`}
        data-testid={`hide-${idOf(thing)}`}
        onClick={() => setStanding([thing], hidden ? "shown" : "hidden")}
      >
        <EyeIcon aria-hidden />
        {words(hidden ? "Hidden" : "Hide", `Hide ${name}`)}
      </button>
    </span>
  );
}

function idOf(thing: ThingRef): string {
  switch (thing.of) {
    case "item":
      return thing.itemId;
    case "opening":
      return thing.openingId;
    case "profile":
      return thing.profileId;
    case "underlay":
      return thing.underlayId;
  }
}
