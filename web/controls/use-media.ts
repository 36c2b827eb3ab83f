import { useCallback, useMemo, useSyncExternalStore } from "react";

/** Whether a media query holds now. */
export function useMedia(query: string): boolean {
  const list = useMemo(() => matchMedia(query), [query]);
  const subscribe = useCallback(
    (changed: () => void) => {
      list.addEventListener("change", changed);
      return () => list.removeEventListener("change", changed);
    },
    [list],
  );
  return useSyncExternalStore(subscribe, () => list.matches);
}
