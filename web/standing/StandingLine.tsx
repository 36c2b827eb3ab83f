import { lockedSectionOf, nameOfItem, standingOf, type ThingRef } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import { StandingSwitches } from "./StandingSwitches.tsx";
import "./standing.css";

/** How the chosen thing stands, with its switches; what is locked says so, and how it can be changed. */
export function StandingLine({ thing, name }: { readonly thing: ThingRef; readonly name: string }) {
  const project = useDocument((state) => state.project);
  const { locked, hidden } = standingOf(project, thing);
  const lockedWith = thing.of === "profile" ? lockedSectionOf(project, thing.profileId) : undefined;
  return (
    <div className="standing-line" data-testid="standing-line">
      <StandingSwitches thing={thing} name={name} look="words" />
      {locked ? (
        <p className="pencil" data-testid="locked-words">
          {name} is locked. Unlock it to change it.
        </p>
      ) : null}
      {lockedWith && !locked ? (
        <p className="pencil">
          {nameOfItem(lockedWith)} is locked and is bent by it. Unlock that to change the profile.
        </p>
      ) : null}
      {hidden ? (
        <p className="pencil">Hidden on the board only: it is still made, counted and printed.</p>
      ) : null}
    </div>
  );
}
