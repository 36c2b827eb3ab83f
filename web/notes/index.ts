export { NotePanel } from "./NotePanel.tsx";
export { Notes } from "./Notes.tsx";
