export { Choice } from "./Choice.tsx";
export { Dialog } from "./Dialog.tsx";
export { NumberField, showNumber } from "./NumberField.tsx";
export { parseLengthMm, parseNumber } from "./parse-number.ts";
export { Select } from "./Select.tsx";
export { Splitter } from "./Splitter.tsx";
export { TextField } from "./TextField.tsx";
export { useMedia } from "./use-media.ts";
export { useSize } from "./use-size.ts";
