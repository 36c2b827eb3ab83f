import { assertNever } from "../../core/foundation/index.ts";
import { type Item, thingName } from "../../core/project/index.ts";
import { itemOfPart, useDrawnSelection } from "../hand/index.ts";
import { NotePanel } from "../notes/index.ts";
import { chosenThing, StandingLine } from "../standing/index.ts";
import { useDesign, useDocument, useView } from "../stores/index.ts";
import { UnderlayPanel } from "../underlay/index.ts";
import { FencePanel } from "./chosen/FencePanel.tsx";
import { NothingChosen } from "./chosen/NothingChosen.tsx";
import { OpeningPanel } from "./chosen/OpeningPanel.tsx";
import { PlatePanel } from "./chosen/PlatePanel.tsx";
import { ProfilePanel } from "./chosen/ProfilePanel.tsx";
import { SectionPanel } from "./chosen/SectionPanel.tsx";
import { SeveralPanel } from "./chosen/SeveralPanel.tsx";
import { TransitionPanel } from "./chosen/TransitionPanel.tsx";

/** What is chosen, as numbers that can always be typed. */
export function ChosenPanel() {
  return (
    <div className="chosen-panel" data-testid="chosen-panel">
      <ChosenStanding />
      <Chosen />
    </div>
  );
}

/** Lock and hide switches of the chosen item, opening or profile. */
function ChosenStanding() {
  const project = useDocument((state) => state.project);
  const thing = chosenThing(useDrawnSelection());
  if (!thing || thing.of === "underlay") return null;
  return <StandingLine thing={thing} name={thingName(project, thing)} />;
}

function Chosen() {
  const project = useDocument((state) => state.project);
  const selection = useView((view) => view.selection);
  const design = useDesign((state) => state.design);
  if (selection?.kind === "several") return <SeveralPanel grips={selection.grips} />;
  if (selection?.kind === "profile") {
    const profile = project.profiles.find((other) => other.id === selection.profileId);
    return profile ? <ProfilePanel profile={profile} /> : <NothingChosen />;
  }
  if (selection?.kind === "note") {
    const note = project.notes.find((other) => other.id === selection.noteId);
    return note ? <NotePanel key={note.id} note={note} /> : <NothingChosen />;
  }
  if (selection?.kind === "underlay") {
    const underlay = project.underlays.find((other) => other.id === selection.underlayId);
    return underlay ? <UnderlayPanel key={underlay.id} underlay={underlay} /> : <NothingChosen />;
  }
  if (selection?.kind === "opening") {
    const opening = project.openings.find((other) => other.id === selection.openingId);
    return opening ? <OpeningPanel key={opening.id} opening={opening} /> : <NothingChosen />;
  }
  const itemId =
    selection?.kind === "item"
      ? selection.itemId
      : selection?.kind === "part"
        ? itemOfPart(design, selection.partId)
        : undefined;
  const item = project.items.find((other) => other.id === itemId);
  return item ? <ItemPanel key={item.id} item={item} /> : <NothingChosen />;
}

function ItemPanel({ item }: { readonly item: Item }) {
  switch (item.kind) {
    case "section":
      return <SectionPanel section={item} />;
    case "fence":
      return <FencePanel fence={item} />;
    case "transition":
      return <TransitionPanel transition={item} />;
    case "plate":
      return <PlatePanel plate={item} />;
    default:
      return assertNever(item);
  }
}
