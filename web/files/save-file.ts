import { writeProject } from "../../core/project/index.ts";
import { useDocument } from "../stores/index.ts";
import { useFiles } from "./file-store.ts";

/** Hands the tray over as a project file, named after it. */
export function saveAsFile(): void {
  const { project } = useDocument.getState();
  download(
    new Blob([writeProject(project)], { type: "application/json" }),
    `${fileNameOf(project.title)}.json`,
  );
  useFiles.setState({ inFile: project });
}

/** Gives the builder a file. */
export function download(content: Blob, fileName: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(content);
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

/** A title as a file name: small letters and digits of any script, joined by hyphens. */
export function fileNameOf(title: string): string {
  const name = title
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .replaceAll(/^-+|-+$/g, "");
  return name === "" ? "tray" : name;
}
