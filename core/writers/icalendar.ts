import { type CalendarEvent, calendarEvents, type Design, type WallTime } from "../book/index.ts";
import { dayOfDate } from "../project/index.ts";

/**
 * A calendar after RFC 5545: lines end with CR LF and are folded at 75 octets, text is escaped, times are floating (those
 * on the wall, in no time zone). The stamp is a date of the document, so that the same project gives the same bytes.
 */
export function writeICalendar(
  events: readonly CalendarEvent[],
  { name, stampedOn }: { readonly name: string; readonly stampedOn: string },
): string {
  const stamp = `${stampedOn.replaceAll("-", "")}T000000Z`;
  const lines = [
    "BEGIN:VCALENDAR",
    "VERSION:2.0",
    "PRODID:-//Traywright//Calendar of the work//EN",
    "CALSCALE:GREGORIAN",
    `X-WR-CALNAME:${escaped(name)}`,
    ...events.flatMap((event) => eventLines(event, stamp)),
    "END:VCALENDAR",
  ];
  return lines.map((line) => `${folded(line)}\r\n`).join("");
}

/** The calendar of a design as a file. */
export function writeCalendarFile(design: Pick<Design, "project" | "schedule" | "glueUp">): string {
  const { issuedOn } = design.project.titleBlock;
  const stampedOn = dayOfDate(issuedOn) === undefined ? design.schedule.startOn : issuedOn;
  return writeICalendar(calendarEvents(design), { name: design.project.title, stampedOn });
}

const eventLines = (
  { uid, from, to, title, description, takes }: CalendarEvent,
  stamp: string,
): readonly string[] => [
  "BEGIN:VEVENT",
  `UID:${escaped(uid)}@traywright.invalid`,
  `DTSTAMP:${stamp}`,
  `DTSTART:${wallTime(from)}`,
  `DTEND:${wallTime(to)}`,
  `SUMMARY:${escaped(title)}`,
  `DESCRIPTION:${escaped(description)}`,
  `TRANSP:${takes === "hands" ? "OPAQUE" : "TRANSPARENT"}`,
  "END:VEVENT",
];

/** Form 1 of §3.3.5: local time, without a zone. */
function wallTime({ date, minuteOfDay }: WallTime): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${date.replaceAll("-", "")}T${two(Math.floor(minuteOfDay / 60))}${two(minuteOfDay % 60)}00`;
}

/** §3.3.11: backslash, semicolon, comma and line breaks. Other signs that no text may hold are left out. */
const escaped = (text: string): string =>
  text
    .replaceAll(/[\\;,]/g, (sign) => `\\${sign}`)
    .replaceAll(/\r\n|\r|\n/g, "\\n")
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out.
    .replaceAll(/[\u0000-\u0008\u000b-\u001f\u007f]/g, "");

const MOST_OCTETS = 75;

/** §3.1: a line of over 75 octets goes on in the next, behind a space; no letter is divided. */
function folded(line: string): string {
  const pieces: string[] = [];
  let piece = "";
  let octets = 0;
  for (const letter of line) {
    const size = octetsOf(letter);
    if (octets + size > MOST_OCTETS) {
      pieces.push(piece);
      piece = "";
      octets = 1;
    }
    piece += letter;
    octets += size;
  }
  return [...pieces, piece].join("\r\n ");
}

/** How many octets a letter takes in UTF-8. */
function octetsOf(letter: string): number {
  const code = letter.codePointAt(0) ?? 0;
  if (code < 0x80) return 1;
  if (code < 0x800) return 2;
  return code < 0x10000 ? 3 : 4;
}
