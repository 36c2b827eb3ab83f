/** The first of `stem`, `stem2`, `stem3` … that is not taken. */
export function freshId(stem: string, taken: readonly { readonly id: string }[]): string {
  for (let count = 1; ; count++) {
    const id = count === 1 ? stem : `${stem}${count}`;
    if (!taken.some((one) => one.id === id)) return id;
  }
}
