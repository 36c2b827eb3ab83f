import { Fragment } from "react";
import { Dialog } from "../controls/index.ts";
import { allDeeds, type DeedGroup, DeedGroups, KeyNames } from "../deeds/index.ts";
import { lookKeys } from "../look3d/index.ts";
import { useView } from "../stores/index.ts";

interface KeyRow {
  readonly keys: readonly string[];
  readonly explains: string;
}

/** Keys that are no deed: they go with what the hand is doing. */
const HAND_KEYS: readonly KeyRow[] = [
  { keys: ["0 to 9"], explains: "Type where the next node goes" },
  { keys: ["Alt"], explains: "Held: nothing snaps" },
  { keys: ["Space"], explains: "Held: pull the paper" },
  { keys: ["Tab"], explains: "Go to the next thing that can be used" },
];

/** What the keys do. */
export function KeyList() {
  const close = () => useView.getState().setOverlay(undefined);
  const groups = Object.keys(DeedGroups).filter(isGroup);
  return (
    <Dialog title="What the keys do" testId="key-list" onClose={close}>
      <div className="key-groups">
        {groups.map((group) => (
          <KeyGroup key={group} title={DeedGroups[group]} rows={rowsOf(group)} />
        ))}
        <KeyGroup title="Held or typed" rows={HAND_KEYS} />
        <KeyGroup title="On the tray in 3D" rows={lookKeys} />
      </div>
    </Dialog>
  );
}

const isGroup = (name: string): name is DeedGroup => name in DeedGroups;

const rowsOf = (group: DeedGroup): readonly KeyRow[] =>
  allDeeds.filter((deed) => deed.group === group && deed.keys.length > 0);

function KeyGroup({ title, rows }: { readonly title: string; readonly rows: readonly KeyRow[] }) {
  return (
    <section>
      <h3 className="caption">{title}</h3>
      <dl>
        {rows.map(({ keys, explains }) => (
          <Fragment key={explains}>
            <dt>
              <KeyNames names={keys} />
            </dt>
            <dd>{explains}</dd>
          </Fragment>
        ))}
      </dl>
    </section>
  );
}
