export { UnderlayPanel } from "./UnderlayPanel.tsx";
export { UnderlayPictures } from "./UnderlayPictures.tsx";
export { UnderlayRow } from "./UnderlayRow.tsx";
export { choosePicture, usePictureEntry } from "./use-picture-entry.ts";
