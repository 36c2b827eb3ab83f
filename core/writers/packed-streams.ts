import { zlibSync } from "fflate";
import { jsPDF } from "jspdf";

/**
 * Has the PDF library pack its streams in whole blocks. Its own way sets the packed text together letter by letter, which
 * for a book takes ten times the memory of the book. The bytes are the same.
 */
export function packStreamsInBlocks(): void {
  Object.assign(jsPDF.API, { processDataByFilters: packed });
}

/** As the library asks for it: one character a byte, and the names of the filters that undo what was done. */
function packed(data: string, filters: readonly string[] = []) {
  const isPacked = filters.includes("FlateEncode");
  return isPacked
    ? { data: toLatin(zlibSync(fromLatin(data))), reverseChain: "/FlateDecode" }
    : { data, reverseChain: "" };
}

function fromLatin(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) bytes[i] = text.charCodeAt(i);
  return bytes;
}

/** The bytes as text, one character for each. */
export function toLatin(bytes: Uint8Array): string {
  const blocks: string[] = [];
  for (let i = 0; i < bytes.length; i += 8192)
    blocks.push(String.fromCharCode(...bytes.subarray(i, i + 8192)));
  return blocks.join("");
}
