import { toDegrees, toRadians } from "../../../core/foundation/index.ts";
import type { Section, SectionChanges } from "../../../core/project/index.ts";
import { Select, TextField } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { CoreFields } from "./CoreFields.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { FollowOffers } from "./FollowOffers.tsx";
import { JointOffers } from "./JointOffers.tsx";
import { LabelledCell } from "./LabelledCell.tsx";
import { NodesTable } from "./NodesTable.tsx";

/** A section as numbers: its name, profile, attitude and foam, and the nodes of its outline and profile. */
export function SectionPanel({ section }: { readonly section: Section }) {
  const profiles = useDocument((state) => state.project.profiles);
  const change = (changes: SectionChanges) =>
    useDocument.getState().dispatch({ kind: "change-section", itemId: section.id, changes });
  return (
    <>
      <header>
        <h2>
          <span className="code">S{section.number}</span> {section.name}
        </h2>
        <HelpMark term="section" />
        <DeleteButton word="Delete section" commands={[{ kind: "delete-item", itemId: section.id }]} />
      </header>
      <ChosenProblems
        belongs={({ itemId, profileId }) =>
          itemId === section.id || (itemId === undefined && profileId === section.profileId)
        }
      />
      <TextField label="Name" value={section.name} mostLetters={60} onChange={(name) => change({ name })} />
      <Select
        label="Profile"
        value={section.profileId}
        options={profiles.map((profile) => ({ value: profile.id, word: profile.name }))}
        onChange={(profileId) => change({ profileId })}
      />
      <button
        type="button"
        className="plain"
        data-testid="choose-profile-of-section"
        onClick={() => useView.getState().select({ kind: "profile", profileId: section.profileId })}
      >
        Go to this profile
      </button>
      <NodesTable
        line={{ of: "item", itemId: section.id }}
        title="Outline in plan"
        closed={section.outline.closed}
      />
      <FollowOffers itemId={section.id} />
      <JointOffers itemId={section.id} />
      <h3 className="caption">Attitude and foam</h3>
      <LabelledCell
        label="Heading of the rulings"
        kind="angle"
        value={toDegrees(section.headingRad)}
        testId="heading"
        onChange={(deg) => change({ headingRad: toRadians(deg) })}
      />
      <LabelledCell
        label="Tilt, outward up"
        kind="angle"
        value={toDegrees(section.tiltRad)}
        testId="tilt"
        onChange={(deg) => change({ tiltRad: toRadians(deg) })}
      />
      <LabelledCell
        label="Pivot line y"
        kind="length"
        hint="inner edge"
        value={section.pivotYMm}
        testId="pivot"
        onClear={() => change({ pivotYMm: undefined })}
        onChange={(pivotYMm) => change({ pivotYMm })}
      />
      <CoreFields item={section} onChange={(core) => change({ core })} />
    </>
  );
}
