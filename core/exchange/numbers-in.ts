const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/gi;

/** The numbers of a list between spaces and commas, as SVG writes them; undefined where anything else stands in it. */
export function numbersIn(text: string): readonly number[] | undefined {
  if (text.replaceAll(NUMBER, "").replaceAll(/[\s,]/g, "") !== "") return undefined;
  return [...text.matchAll(NUMBER)].map(([number]) => Number(number));
}
