/** The trays that come with the program. */
export type ExampleName = "hill-climb-floor" | "practice-piece";

const files = import.meta.glob<string>("../examples/*.json", { query: "?raw", import: "default" });

/** The text of an example's project file. */
export async function exampleText(name: ExampleName): Promise<string> {
  const load = files[`../examples/${name}.json`];
  if (load === undefined) throw new Error(`There is no example ${name}.`);
  return load();
}
