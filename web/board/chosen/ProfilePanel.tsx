import type { Profile } from "../../../core/project/index.ts";
import { TextField } from "../../controls/index.ts";
import { HelpMark } from "../../help/index.ts";
import { useDocument, useView } from "../../stores/index.ts";
import { ChosenProblems } from "./ChosenProblems.tsx";
import { DeleteButton } from "./DeleteButton.tsx";
import { NodesTable } from "./NodesTable.tsx";

/** A profile as numbers, and the sections that use it. */
export function ProfilePanel({ profile }: { readonly profile: Profile }) {
  const items = useDocument((state) => state.project.items);
  const users = items.filter((item) => item.kind === "section" && item.profileId === profile.id);
  return (
    <>
      <header>
        <h2>{profile.name}</h2>
        <HelpMark term="profile" />
        {users.length === 0 ? (
          <DeleteButton
            word="Delete profile"
            commands={[{ kind: "delete-profile", profileId: profile.id }]}
          />
        ) : null}
      </header>
      <ChosenProblems belongs={({ profileId }) => profileId === profile.id} />
      <TextField
        label="Name"
        value={profile.name}
        mostLetters={60}
        onChange={(name) =>
          useDocument.getState().dispatch({ kind: "rename-profile", profileId: profile.id, name })
        }
      />
      <p className="pencil">
        {users.length === 0 ? "No section uses it." : "Used by "}
        {users.map((item) => (
          <button
            key={item.id}
            type="button"
            className="plain"
            onClick={() => useView.getState().select({ kind: "item", itemId: item.id })}
          >
            {item.name}
          </button>
        ))}
      </p>
      <NodesTable
        line={{ of: "profile", profileId: profile.id }}
        title="Nodes in the side view"
        closed={false}
      />
    </>
  );
}
