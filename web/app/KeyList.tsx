import { Fragment } from "react";
import { Dialog } from "../controls/index.ts";
import { lookKeys } from "../look3d/index.ts";
import { useView } from "../stores/index.ts";
import { type Action, actions } from "./actions.ts";
import { boardKeys } from "./board-keys.ts";

/** What the keys do. */
export function KeyList() {
  const close = () => useView.getState().setOverlay(undefined);
  const all: readonly Action[] = Object.values(actions);
  const withKeys = all.filter((action) => action.keys.length > 0);
  return (
    <Dialog title="What the keys do" testId="key-list" onClose={close}>
      <div className="key-groups">
        <section>
          <h3 className="caption">Everywhere</h3>
          <dl>
            {withKeys.map((action) => (
              <Fragment key={action.name}>
                <dt>
                  <Keys names={action.keys} />
                </dt>
                <dd>{action.explains}</dd>
              </Fragment>
            ))}
            <dt>
              <Keys names={["Tab"]} />
            </dt>
            <dd>Go to the next thing that can be used</dd>
          </dl>
        </section>
        <KeyGroup title="On the board" group={boardKeys} />
        <KeyGroup title="On the tray in 3D" group={lookKeys} />
      </div>
    </Dialog>
  );
}

function KeyGroup({ title, group }: { readonly title: string; readonly group: typeof boardKeys }) {
  return (
    <section>
      <h3 className="caption">{title}</h3>
      <dl>
        {group.map(({ keys, explains }) => (
          <Fragment key={explains}>
            <dt>
              <Keys names={keys} />
            </dt>
            <dd>{explains}</dd>
          </Fragment>
        ))}
      </dl>
    </section>
  );
}

function Keys({ names }: { readonly names: readonly string[] }) {
  return (
    <>
      {names.map((name, index) => (
        <Fragment key={name}>
          {index > 0 ? <span className="pencil"> or </span> : null}
          <kbd>{name}</kbd>
        </Fragment>
      ))}
    </>
  );
}
