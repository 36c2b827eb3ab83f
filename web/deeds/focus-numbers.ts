/** Goes to the first number of the chosen node, else of what is chosen; to nothing where there is none. */
export function focusNumbers(): void {
  const field =
    document.querySelector<HTMLElement>(".chosen-panel [data-chosen-row] input") ??
    document.querySelector<HTMLElement>(".chosen-panel input");
  field?.focus();
}
