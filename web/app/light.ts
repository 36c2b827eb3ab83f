import { usePreferences } from "../stores/index.ts";

/** Shows light or dark as the builder prefers it, or as the device says, and keeps following both. */
export function followLight(): void {
  const deviceIsDark = matchMedia("(prefers-color-scheme: dark)");
  const show = () => {
    const { light } = usePreferences.getState();
    const isDark = light === "dark" || (light === "system" && deviceIsDark.matches);
    document.documentElement.dataset.light = isDark ? "dark" : "light";
  };
  show();
  usePreferences.subscribe(show);
  deviceIsDark.addEventListener("change", show);
}
