import { ChevronDown } from "lucide-react";
import type { ReactNode } from "react";
import { useMedia } from "../../controls/index.ts";

interface SideSettingsProps {
  /** What is set here, where the settings are folded away on a narrow screen. */
  readonly summary: string;
  readonly children: ReactNode;
}

/** The settings of a stage: beside its drawing, or folded above it where there is no room. */
export function SideSettings({ summary, children }: SideSettingsProps) {
  const isNarrow = useMedia("(max-width: 1023px)");
  return (
    <details className="side-settings" open={!isNarrow} key={isNarrow ? "folded" : "beside"}>
      <summary>
        <ChevronDown className="fold-sign" aria-hidden /> {summary}
      </summary>
      <div className="side-settings-groups">{children}</div>
    </details>
  );
}
