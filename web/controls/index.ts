export { Choice } from "./Choice.tsx";
export { Dialog } from "./Dialog.tsx";
export { NumberField, showNumber, wordWrong } from "./NumberField.tsx";
export { Select } from "./Select.tsx";
export { Splitter } from "./Splitter.tsx";
export { TextField } from "./TextField.tsx";
export { useLengths } from "./use-lengths.ts";
export { useMedia } from "./use-media.ts";
export { useSize } from "./use-size.ts";
