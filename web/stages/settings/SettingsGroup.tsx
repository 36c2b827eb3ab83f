import type { ReactNode } from "react";

/** A group of settings under a small heading. */
export function SettingsGroup({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  return (
    <section className="settings-group" aria-label={title}>
      <h3 className="caption">{title}</h3>
      {children}
    </section>
  );
}
