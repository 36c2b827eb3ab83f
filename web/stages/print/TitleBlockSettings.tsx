import { TextField } from "../../controls/index.ts";
import { SettingsGroup, useSettings } from "../settings/index.ts";

/** What stands in the title block of every page. */
export function TitleBlockSettings() {
  const { project, change } = useSettings();
  const { titleBlock } = project;
  const set = (changes: Partial<typeof titleBlock>) => change({ titleBlock: { ...titleBlock, ...changes } });
  return (
    <SettingsGroup title="Title block">
      <TextField
        label="Title"
        value={project.title}
        mostLetters={60}
        onChange={(title) => change({ title })}
      />
      <TextField
        label="Owner"
        value={titleBlock.owner}
        mostLetters={60}
        onChange={(owner) => set({ owner })}
      />
      <TextField
        label="Drawn by"
        value={titleBlock.creator}
        mostLetters={60}
        onChange={(creator) => set({ creator })}
      />
      <TextField
        label="Approved by"
        value={titleBlock.approver}
        mostLetters={60}
        onChange={(approver) => set({ approver })}
      />
      <TextField
        label="Date"
        type="date"
        value={titleBlock.issuedOn}
        mostLetters={10}
        onChange={(issuedOn) => {
          if (/^\d{4}-\d{2}-\d{2}$/.test(issuedOn)) set({ issuedOn });
        }}
      />
      <TextField
        label="Revision"
        value={titleBlock.revision}
        mostLetters={2}
        onChange={(revision) => set({ revision })}
      />
    </SettingsGroup>
  );
}
