/** What is chosen, as numbers. */
export function ChosenPanel() {
  return null;
}
