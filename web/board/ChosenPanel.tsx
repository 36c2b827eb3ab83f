import { useDesign, useDocument, useView } from "../stores/index.ts";
import { FencePanel } from "./chosen/FencePanel.tsx";
import { NothingChosen } from "./chosen/NothingChosen.tsx";
import { ProfilePanel } from "./chosen/ProfilePanel.tsx";
import { SectionPanel } from "./chosen/SectionPanel.tsx";

/** What is chosen, as numbers that can always be typed. */
export function ChosenPanel() {
  return (
    <div className="chosen-panel" data-testid="chosen-panel">
      <Chosen />
    </div>
  );
}

function Chosen() {
  const project = useDocument((state) => state.project);
  const selection = useView((view) => view.selection);
  const design = useDesign((state) => state.design);
  if (selection?.kind === "profile") {
    const profile = project.profiles.find((other) => other.id === selection.profileId);
    return profile ? <ProfilePanel profile={profile} /> : <NothingChosen />;
  }
  const part =
    selection?.kind === "part" ? design?.parts.find((other) => other.id === selection.partId) : undefined;
  const itemId = selection?.kind === "item" ? selection.itemId : part?.itemId;
  const item = project.items.find((other) => other.id === itemId);
  if (!item) return <NothingChosen />;
  return item.kind === "section" ? (
    <SectionPanel key={item.id} section={item} />
  ) : (
    <FencePanel key={item.id} fence={item} />
  );
}
