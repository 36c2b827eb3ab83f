import { BoxSelect } from "lucide-react";
import { useView } from "../stores/index.ts";

/** While it is on, a press adds or takes away, and a drag draws a box: what Shift does, for a finger too. */
export function SeveralSwitch() {
  const choosing = useView((view) => view.choosing);
  const isOn = choosing === "several";
  return (
    <button
      type="button"
      className="plain"
      aria-pressed={isOn}
      title="Choose several: a press adds or takes away, a drag draws a box (the same as holding Shift)"
      data-testid="choose-several"
      onClick={() => useView.getState().setChoosing(isOn ? "one" : "several")}
    >
      <BoxSelect aria-hidden />
      Several
    </button>
  );
}
