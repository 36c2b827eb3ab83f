import { openFile } from "./open-work.ts";

/** Lets the builder choose a project file and opens it. */
export function askForFile(): void {
  const input = document.createElement("input");
  input.type = "file";
  input.accept = ".json,application/json";
  input.addEventListener("change", () => {
    const file = input.files?.[0];
    if (file) void openFile(file);
  });
  input.click();
}

/** Opens a project file that is dropped anywhere on the page. */
export function listenToDrops(): void {
  const carriesFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
  window.addEventListener("dragover", (event) => {
    if (carriesFile(event)) event.preventDefault();
  });
  window.addEventListener("drop", (event) => {
    if (!carriesFile(event)) return;
    event.preventDefault();
    const file = event.dataTransfer?.files[0];
    if (file) void openFile(file);
  });
}
