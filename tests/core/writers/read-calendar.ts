/** A component of a calendar file: its name, its properties in order, and the components inside it. */
export interface Component {
  readonly name: string;
  readonly properties: readonly { readonly name: string; readonly value: string }[];
  readonly components: readonly Component[];
}

const MOST_OCTETS = 75;
/** §3.1: contentline = name *(";" param) ":" value. Nothing here is written with parameters. */
const CONTENT_LINE = /^([A-Z][A-Z-]*):(.*)$/s;

/** Reads a calendar file by the grammar of RFC 5545, and throws at the first thing that breaks it. */
export function readCalendar(text: string): Component {
  if (!text.endsWith("\r\n")) throw new Error("the last line does not end");
  const physical = text.slice(0, -2).split("\r\n");
  for (const line of physical) {
    if (/[\r\n]/.test(line)) throw new Error(`a bare line break in ${JSON.stringify(line)}`);
    if (new TextEncoder().encode(line).length > MOST_OCTETS) throw new Error(`over 75 octets: ${line}`);
    if (line === "") throw new Error("an empty line");
  }
  const lines = physical
    .join("\r\n")
    .replaceAll(/\r\n[ \t]/g, "")
    .split("\r\n");
  const { component, next } = readComponent(lines, 0);
  if (next !== lines.length) throw new Error("something comes after the calendar");
  return component;
}

function readComponent(lines: readonly string[], start: number): { component: Component; next: number } {
  const begin = propertyAt(lines, start);
  if (begin.name !== "BEGIN") throw new Error(`${begin.name} where a component begins`);
  const properties: { name: string; value: string }[] = [];
  const components: Component[] = [];
  for (let i = start + 1; ; ) {
    const property = propertyAt(lines, i);
    if (property.name === "END") {
      if (property.value !== begin.value) throw new Error(`${begin.value} ends as ${property.value}`);
      return { component: { name: begin.value, properties, components }, next: i + 1 };
    }
    if (property.name === "BEGIN") {
      const inner = readComponent(lines, i);
      components.push(inner.component);
      i = inner.next;
    } else {
      properties.push(property);
      i++;
    }
  }
}

function propertyAt(lines: readonly string[], i: number): { readonly name: string; readonly value: string } {
  const match = CONTENT_LINE.exec(lines[i] ?? "");
  if (!match) throw new Error(`no content line: ${lines[i]}`);
  return { name: match[1] ?? "", value: match[2] ?? "" };
}

/** §3.3.11 back to plain text; throws where a sign should have been escaped. */
export function plainText(value: string): string {
  if (/(^|[^\\])(\\\\)*[;,]/.test(value)) throw new Error(`a bare comma or semicolon in ${value}`);
  return value.replaceAll(/\\(.)/g, (_, sign: string) => {
    if (sign === "n" || sign === "N") return "\n";
    if (sign === "\\" || sign === ";" || sign === ",") return sign;
    throw new Error(`\\${sign} means nothing`);
  });
}

/** The only value of a property. */
export function onlyValue({ name, properties }: Component, wanted: string): string {
  const found = properties.filter((property) => property.name === wanted);
  if (found.length !== 1) throw new Error(`${found.length} times ${wanted} in ${name}`);
  return found[0]?.value ?? "";
}
