/** The builder's word for a field of the document: `tilt` for `tiltRad`; the field's own words where it has none here. */
export const fieldWord = (field: string): string => WORDS[field] ?? ownWords(field);

const WORDS: Readonly<Record<string, string>> = {
  profileId: "profile",
  pivotYMm: "pivot line",
  headingRad: "heading",
  tiltRad: "tilt",
  core: "foam",
  bends: "bending",
  coreSide: "side of the core",
  first: "first edge",
  second: "second edge",
  zMm: "height",
  metalId: "metal",
  foamId: "foam",
  glueId: "glue",
  boardId: "board",
  laying: "laying on stock",
  layouts: "layout on stock",
  priceEach: "price of one",
  itemId: "item",
  fromNodeId: "from node",
  toNodeId: "to node",
  edgeId: "edge",
  standsFirst: "stands first",
  panel: "cut from a panel",
  radiusMm: "radius",
  meets: "meeting",
  tangentInRad: "direction on arrival",
  tangentOutRad: "direction on leaving",
  next: "way on",
  knotSpacingMm: "knot spacing",
  edgeName: "name of the edge",
  title: "title",
  symmetry: "mirroring",
  issuedOn: "date of issue",
};

/** `trimMm` as `trim`, `densityKgPerM3` as `density`, `seamStaggerMm` as `seam stagger`. */
function ownWords(field: string): string {
  const bare = UNITS.reduce(
    (name, [ending]) => (name.endsWith(ending) ? name.slice(0, -ending.length) : name),
    field,
  );
  return bare.replaceAll(/([a-z])([A-Z])/g, "$1 $2").toLowerCase() || field;
}

/** Endings of the names of fields with the units that they stand for, as they are shown; degrees for radians. */
const UNITS: readonly (readonly [string, string])[] = [
  ["KgPerM3", "kg/m³"],
  ["KgPerM2", "kg/m²"],
  ["MPa", "MPa"],
  ["Celsius", "°C"],
  ["Minutes", "min"],
  ["Hours", "h"],
  ["MmPerPx", "mm/px"],
  ["Mm", "mm"],
  ["Rad", "°"],
];

/** The unit that a field's values are shown in; undefined where they have none. */
export const unitOfField = (field: string): string | undefined =>
  UNITS.find(([ending]) => field.endsWith(ending))?.[1];
