/** One import of a source file; `specifier` is empty where it is not a plain string. */
export interface ImportLine {
  readonly specifier: string;
  /** Counted from 1. */
  readonly line: number;
}

const STATEMENT = /(?:^|[;}\n])[ \t]*(?:import|export)\b(?:[^;"'`()=]*?\bfrom)?[ \t\n]*(["'])([^"'\n]*)\1/g;
const CALL = /(?<![.\w])import[ \t\n]*\([ \t\n]*(?:(["'`])([^"'`\n$]*)\1[ \t\n]*[,)])?/g;
const WORKER = /\bnew[ \t\n]+URL\([ \t\n]*(["'])(\.[^"'\n]*)\1[ \t\n]*,[ \t\n]*import\.meta\.url/g;

/**
 * The files and packages that a source text imports: `import … from`, `export … from`, bare `import "…"`,
 * `import("…")` in values and types, and `new URL("…", import.meta.url)`. Comments and templates do not count.
 */
export function readImports(text: string): readonly ImportLine[] {
  const code = blankComments(text);
  return [STATEMENT, CALL, WORKER]
    .flatMap((pattern) => [...code.matchAll(pattern)])
    .map((match) => ({ specifier: match[2] ?? "", line: lineAt(code, match) }))
    .sort((a, b) => a.line - b.line);
}

function lineAt(code: string, match: RegExpMatchArray): number {
  const end = (match.index ?? 0) + match[0].length;
  return code.slice(0, end).split("\n").length;
}

/** The same text, same line count, with comments emptied; quotes inside strings and comments are not mixed up. */
function blankComments(text: string): string {
  const tokens =
    /\/\*[\s\S]*?\*\/|\/\/[^\n]*|"(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\[\s\S]|[^`\\])*`/g;
  return text.replace(tokens, (token) => {
    if (token.startsWith("/")) return token.replace(/[^\n]/g, " ");
    return token.startsWith("`") && token.includes("\n") ? `\`${token.replace(/[^\n]/g, "")}\`` : token;
  });
}
