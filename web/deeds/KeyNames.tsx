import "./deeds.css";
import { Fragment } from "react";

const ARROWS: Readonly<Record<string, string>> = { Left: "←", Right: "→", Up: "↑", Down: "↓" };

/** A key as it is printed on the keyboard. */
export const shownKey = (name: string): string =>
  name.replace(/Arrow(\w+)/, (_, way: string) => ARROWS[way] ?? way);

/** Keys as they are read: one or another. */
export function KeyNames({ names }: { readonly names: readonly string[] }) {
  return (
    <span className="key-names">
      {names.map((name, index) => (
        <Fragment key={name}>
          {index > 0 ? <span className="pencil"> or </span> : null}
          <kbd>{shownKey(name)}</kbd>
        </Fragment>
      ))}
    </span>
  );
}
