import type { ReactNode } from "react";
import { HelpMark, type TermName } from "../../help/index.ts";

interface SettingsGroupProps {
  readonly title: string;
  /** A word of the trade that these settings are about. */
  readonly help?: TermName;
  readonly children: ReactNode;
}

/** A group of settings under a small heading. */
export function SettingsGroup({ title, help, children }: SettingsGroupProps) {
  return (
    <section className="settings-group" aria-label={title}>
      <div className="with-help">
        <h3 className="caption">{title}</h3>
        {help === undefined ? null : <HelpMark term={help} />}
      </div>
      {children}
    </section>
  );
}
