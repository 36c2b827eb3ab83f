import { useFiles } from "./file-store.ts";
import { keepChanges } from "./keep-work.ts";
import { slotOfTab } from "./tab-slot.ts";
import { takeUpKept } from "./take-up.ts";
import { forgetLookedAt, refreshWorks } from "./works-list.ts";

/**
 * Goes on with what was in hand in this browser tab before a reload, or with the start page where nothing was; and
 * from then on keeps every change on this device. Where there is no storage, the start page says so.
 */
export async function beginWithFiles(): Promise<void> {
  const slot = slotOfTab();
  try {
    await refreshWorks();
    const work = useFiles.getState().works.find((each) => each.slot === slot);
    if (work !== undefined && work.deletedAtMs === undefined) takeUpKept(work);
    void forgetLookedAt(slot).catch(() => undefined);
  } catch {
    useFiles.setState({ keeping: "closed" });
  }
  keepChanges();
}
