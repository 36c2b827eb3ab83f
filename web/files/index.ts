export { askForFile, listenToDrops } from "./ask-for-file.ts";
export { beginWithFiles } from "./begin.ts";
export { type FileStore, useFiles } from "./file-store.ts";
export type { KeptWork } from "./kept-work.ts";
export { makeFromStarter, openExample, openFile, startNew } from "./open-work.ts";
export { download, fileNameOf, saveAsFile } from "./save-file.ts";
export { goBackToWork, showStartPage, takeUpKept } from "./take-up.ts";
export { wordNotKept } from "./tell-not-kept.ts";
export { deleteForGood, deleteWork, putBack, refreshWorks, renameWork } from "./works-list.ts";
