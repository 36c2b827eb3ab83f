/** The heads of a table's columns of figures. */
export function FigureHeads({ words }: { readonly words: readonly string[] }) {
  return words.map((word) => (
    <th key={word} scope="col" className="figure">
      {word}
    </th>
  ));
}
