export { type NodeColumn, type NodeTable, nodeTableOf } from "./node-table.ts";
export { type Paste, type PastePlace, pasteBlock } from "./paste-block.ts";
export { type Block, isBlock, type ReadBlock, readBlock } from "./read-block.ts";
export { writeNodeTable } from "./write-node-table.ts";
