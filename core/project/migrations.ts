/** A document of any version, as it comes out of a file: nothing about it is known yet. */
export type RawDocument = Readonly<Record<string, unknown>>;

/**
 * One step for each version, from `index` to `index + 1`; never edited after release. A step moves and renames
 * what is there and leaves faults as they are: the validation that follows names them.
 */
export const MIGRATIONS: readonly ((document: RawDocument) => RawDocument)[] = [
  fromVersion0,
  fromVersion1,
  fromVersion2,
  fromVersion3,
  fromVersion4,
  fromVersion5,
];

/**
 * Version 0, the first draft of the format, kept angles in degrees, one foam thickness for the whole tray
 * beside the name of the foam, and one number for the spacing of ribs. It knew only upright jigs and only the
 * air side as the drawn face.
 */
function fromVersion0(document: RawDocument): RawDocument {
  const { foamId, foamThicknessMm, ...rest } = document;
  return {
    ...rest,
    version: 1,
    drawnFace: "air",
    core: { foamId, thicknessMm: foamThicknessMm },
    jig: isRecord(rest.jig) ? jigFromVersion0(rest.jig) : rest.jig,
    profiles: mapList(rest.profiles, (profile) => ({
      ...profile,
      nodes: mapList(profile.nodes, nodeFromVersion0),
    })),
    items: mapList(rest.items, itemFromVersion0),
  };
}

/** Version 1 knew no openings, no metal plates, and no joints but those of edges that follow. */
function fromVersion1(document: RawDocument): RawDocument {
  const { materials } = document;
  return {
    ...document,
    version: 2,
    openings: [],
    openingSettings: { webMm: 30 },
    materials: isRecord(materials) ? { ...materials, metals: METALS_OF_VERSION_2 } : materials,
    joints: { toleranceMm: 0.5, joined: [], cuts: [] },
  };
}

/** Version 2 knew no notes and no pictures under the drawing, and nothing in it was locked or hidden. */
function fromVersion2(document: RawDocument): RawDocument {
  return { ...document, version: 3, notes: [], underlays: [] };
}

/** Version 3 knew one way to bend: cold, whole. */
function fromVersion3(document: RawDocument): RawDocument {
  return { ...document, version: 4, bending: BENDING_OF_VERSION_4 };
}

/** Version 4 knew no layouts on stock. */
function fromVersion4(document: RawDocument): RawDocument {
  const laying = { clearanceMm: 3, rotation: "free", currency: "€" };
  return { ...document, version: 5, laying, layouts: [] };
}

/** Version 5 had a choice of over-bending the ribs, which nothing followed. */
function fromVersion5(document: RawDocument): RawDocument {
  const { bending } = document;
  if (!isRecord(bending)) return { ...document, version: 6 };
  const { overBend: _overBend, ...rest } = bending;
  return { ...document, version: 6, bending: rest };
}

const BENDING_OF_VERSION_4 = {
  slotKerfMm: 3,
  slotWebMm: 3,
  slotSide: "closing",
  slotFilling: "glued",
  fillingKgPerM3: 1100,
  sagittaMm: 1,
  skinModulusMPa: 15000,
  holdBy: "sandbags",
  sandbagKg: 5,
  strapN: 200,
  washerMm: 40,
  crushMPa: 0.06,
  pinN: 0,
  overBend: "none",
};

const METALS_OF_VERSION_2 = [
  {
    id: "aluminium-soft",
    name: "Aluminium 5754 H22",
    densityKgPerM3: 2670,
    kFactor: 0.407,
    leastRadiusRatio: 1.5,
    origins: { densityKgPerM3: "memory", kFactor: "memory", leastRadiusRatio: "common-practice" },
  },
  {
    id: "steel-mild",
    name: "Mild steel sheet",
    densityKgPerM3: 7850,
    kFactor: 0.407,
    leastRadiusRatio: 1,
    origins: { densityKgPerM3: "memory", kFactor: "memory", leastRadiusRatio: "common-practice" },
  },
];

function jigFromVersion0(jig: RawDocument): RawDocument {
  const { ribSpacingMm, ...rest } = jig;
  return {
    ...rest,
    attitude: "upright",
    across: { kind: "spacing", spacingMm: ribSpacingMm },
    along: { kind: "none" },
  };
}

function itemFromVersion0(item: RawDocument): RawDocument {
  const turned = renameAngles(item, { headingDeg: "headingRad", tiltDeg: "tiltRad" });
  const { outline, line, lowerEdge } = turned;
  return {
    ...turned,
    ...(isRecord(outline) ? { outline: lineFromVersion0(outline) } : {}),
    ...(isRecord(line) ? { line: lineFromVersion0(line) } : {}),
    ...(isRecord(lowerEdge)
      ? { lowerEdge: { ...lowerEdge, nodes: mapList(lowerEdge.nodes, nodeFromVersion0) } }
      : {}),
  };
}

const lineFromVersion0 = (line: RawDocument): RawDocument => ({
  ...line,
  elements: mapList(line.elements, nodeFromVersion0),
});

const nodeFromVersion0 = (node: RawDocument): RawDocument =>
  renameAngles(node, { tangentInDeg: "tangentInRad", tangentOutDeg: "tangentOutRad" });

/** Each angle in degrees under its old name becomes one in radians under its new name. */
function renameAngles(record: RawDocument, names: Readonly<Record<string, string>>): RawDocument {
  return Object.fromEntries(
    Object.entries(record).map(([key, value]) => {
      const newName = names[key];
      if (newName === undefined) return [key, value];
      return [newName, typeof value === "number" ? (value * Math.PI) / 180 : value];
    }),
  );
}

/** The list with each record in it changed; anything else stays for the validation to name. */
const mapList = (list: unknown, change: (record: RawDocument) => RawDocument): unknown =>
  Array.isArray(list) ? list.map((entry: unknown) => (isRecord(entry) ? change(entry) : entry)) : list;

export const isRecord = (value: unknown): value is RawDocument =>
  typeof value === "object" && value !== null && !Array.isArray(value);
