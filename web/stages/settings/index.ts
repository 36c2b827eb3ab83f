export { EmptyPlace } from "./EmptyPlace.tsx";
export { type Figure, MaterialFigures } from "./MaterialFigures.tsx";
export { OwnedFields } from "./OwnedFields.tsx";
export { originWords } from "./origin-words.ts";
export { SettingsGroup } from "./SettingsGroup.tsx";
export { ShopFields } from "./ShopFields.tsx";
export { SideSettings } from "./SideSettings.tsx";
export { useSettings } from "./use-settings.ts";
