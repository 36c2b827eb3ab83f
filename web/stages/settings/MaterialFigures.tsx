import type { Origin } from "../../../core/project/index.ts";
import { NumberField } from "../../controls/index.ts";
import { originWords } from "./origin-words.ts";

/** A figure of a material: the field that holds it, its word and unit. */
export interface Figure<Key extends string> {
  readonly key: Key;
  readonly label: string;
  readonly unit: string;
}

type MaterialWith<Key extends string> = { readonly [Field in Key]: number } & {
  readonly id: string;
  readonly origins: Readonly<Record<string, Origin>>;
};

interface MaterialFiguresProps<Key extends string, Material extends MaterialWith<Key>> {
  /** The list it stands in: `foams`, `glues`, `boards`. */
  readonly list: string;
  readonly material: Material;
  readonly figures: readonly Figure<Key>[];
  readonly onChange: (material: Material) => void;
}

/** The figures of one material, each with where it comes from; a typed one is marked as typed. */
export function MaterialFigures<Key extends string, Material extends MaterialWith<Key>>({
  list,
  material,
  figures,
  onChange,
}: MaterialFiguresProps<Key, Material>) {
  return (
    <>
      {figures.map(({ key, label, unit }) => (
        <NumberField
          key={key}
          label={label}
          unit={unit}
          value={material[key]}
          note={originWords(material.origins[key])}
          setting={`materials.${list}.${material.id}.${key}`}
          onChange={(value) =>
            onChange({ ...material, [key]: value, origins: { ...material.origins, [key]: "typed" } })
          }
        />
      ))}
    </>
  );
}
