export { askForFile, listenToDrops } from "./ask-for-file.ts";
export { useFiles } from "./file-store.ts";
export { takeUpLastWork } from "./keep-work.ts";
export { openExample, openFile, startNew, takeUpKept } from "./open-work.ts";
export { download, fileNameOf, saveAsFile } from "./save-file.ts";
