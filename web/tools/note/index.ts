export { type NoteState, noteTool } from "./note-tool.ts";
