/** A text file of the pack: its name and what it holds. */
export interface NamedText {
  readonly name: string;
  readonly text: string;
}
