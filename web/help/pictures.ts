/** How a stroke of a small picture is drawn: ink what is meant, pencil what is about it, mark what the word names. */
export type Pen = "ink" | "pencil" | "dashed" | "mark" | "body";

/** A stroke: its pen and an SVG path in a field of 120 by 64. */
export type Stroke = readonly [pen: Pen, path: string];

/** One small line picture a term, in plan or in side view as the board shows it. */
export const pictures = {
  section: [
    ["body", "M14 14H92L106 30V52H14Z"],
    ["pencil", "M14 58H106"],
    ["mark", "M14 14H92L106 30V52H14Z"],
  ],
  transition: [
    ["pencil", "M16 52L40 16M34 54L56 17M52 56L72 19M70 56L88 22M88 54L104 26"],
    ["mark", "M16 52Q52 60 88 54"],
    ["mark", "M40 16Q74 14 104 26"],
  ],
  fence: [
    ["pencil", "M8 18H112"],
    ["body", "M20 18H100V46Q60 54 20 46Z"],
    ["mark", "M20 46Q60 54 100 46"],
    ["dashed", "M8 58H112"],
  ],
  plate: [
    ["body", "M30 36H90V50H30Z"],
    ["mark", "M30 36L22 16H82L90 36M30 36H90"],
  ],
  opening: [
    ["body", "M10 12H110V54H10Z"],
    ["mark", "M44 33A16 13 0 1 0 76 33A16 13 0 1 0 44 33"],
  ],
  profile: [
    ["dashed", "M8 56H112"],
    ["mark", "M12 30L50 44Q70 48 108 14"],
  ],
  follow: [
    ["body", "M12 10H108V32H12Z"],
    ["pencil", "M12 32V56H108V32"],
    ["mark", "M12 32H108"],
  ],
  hand: [
    ["dashed", "M6 32H114"],
    ["pencil", "M20 32V14H92L104 32"],
    ["mark", "M20 32V50H92L104 32"],
  ],
  ruling: [
    ["ink", "M16 20Q60 4 104 20V52Q60 36 16 52Z"],
    ["pencil", "M38 14V46M82 14V46"],
    ["mark", "M60 12V44"],
  ],
  twist: [
    ["ink", "M20 16L100 28"],
    ["ink", "M20 48L100 40"],
    ["mark", "M20 16V48M100 28V40"],
    ["pencil", "M40 19V46M60 22V44M80 25V42"],
  ],
  fan: [
    ["ink", "M16 50Q60 62 104 44"],
    ["mark", "M60 10L16 50M60 10L38 54M60 10L60 54M60 10L82 51M60 10L104 44"],
  ],
  neutralFibre: [
    ["ink", "M14 44Q60 4 106 44"],
    ["ink", "M24 54Q60 22 96 54"],
    ["mark", "M19 49Q60 13 101 49"],
  ],
  verdict: [
    ["pencil", "M10 46H40"],
    ["ink", "M46 46Q62 46 72 34"],
    ["mark", "M80 46Q92 46 92 34Q92 24 84 24"],
  ],
  skinAllowance: [
    ["body", "M14 22H106V46H14Z"],
    ["mark", "M14 50H106"],
    ["pencil", "M14 18H106"],
  ],
  joint: [
    ["body", "M10 20H58L60 46H10Z"],
    ["body", "M62 20L106 8L112 32L60 46Z"],
    ["mark", "M60 20L60 46"],
  ],
  fold: [
    ["ink", "M10 46H60L108 22"],
    ["dashed", "M60 46H110"],
    ["mark", "M88 46A28 28 0 0 0 85 33"],
  ],
  bevel: [
    ["body", "M10 18H76L90 46H10Z"],
    ["dashed", "M90 46V12"],
    ["mark", "M76 18L90 46"],
  ],
  setBack: [
    ["body", "M10 22H70V44H10Z"],
    ["dashed", "M96 10V56"],
    ["mark", "M70 33H96M76 29L70 33L76 37M90 29L96 33L90 37"],
  ],
  web: [
    ["body", "M10 10H110V54H10Z"],
    ["ink", "M30 24H84V54"],
    ["ink", "M30 24V54"],
    ["mark", "M84 36H110M90 32L84 36L90 40M104 32L110 36L104 40"],
  ],
  kerf: [
    ["body", "M10 20H54V50H10Z"],
    ["body", "M66 20H110V50H66Z"],
    ["mark", "M54 12V56M66 12V56"],
  ],
  strip: [
    ["body", "M10 14H110V50H10Z"],
    ["mark", "M52 14V50"],
    ["pencil", "M82 14V50"],
  ],
  rib: [
    ["pencil", "M8 56H112"],
    ["body", "M18 56V34Q50 18 102 38V56Z"],
    ["mark", "M18 34Q50 18 102 38"],
  ],
  station: [
    ["pencil", "M8 48H112"],
    ["pencil", "M20 44V52M60 44V52M100 44V52"],
    ["mark", "M60 8V56"],
  ],
  datum: [
    ["ink", "M12 18Q60 4 108 22"],
    ["mark", "M8 52H112"],
    ["pencil", "M24 52V15M48 52V12M72 52V13M96 52V18"],
  ],
  "frozen-error": [
    ["pencil", "M16 54V26M60 54V16M104 54V26M16 26Q60 4 104 26"],
    ["mark", "M16 26Q38 22 60 16Q82 22 104 26"],
  ],
  baseboard: [
    ["pencil", "M24 46V26M48 46V20M72 46V22M96 46V30"],
    ["body", "M8 46H112V56H8Z"],
    ["mark", "M8 46H112"],
  ],
  attitude: [
    ["ink", "M10 24Q32 10 52 24"],
    ["pencil", "M14 26V50M48 26V50M8 50H54"],
    ["mark", "M68 20Q90 36 112 20"],
    ["pencil", "M72 24V50M108 24V50M64 50H116"],
  ],
  closer: [
    ["body", "M8 18H42V48H8Z"],
    ["body", "M78 18H112V48H78Z"],
    ["mark", "M45 18H75V48H45Z"],
  ],
  seat: [
    ["body", "M10 12H110V28H10Z"],
    ["ink", "M50 30H70V58H50Z"],
    ["mark", "M44 29H76"],
  ],
  bendAllowance: [
    ["ink", "M10 50H58Q86 50 86 26V8"],
    ["mark", "M58 50Q86 50 86 26"],
    ["pencil", "M58 44V56M80 26H92"],
  ],
  seam: [
    ["body", "M10 14H110V50H10Z"],
    ["mark", "M60 14V50"],
    ["pencil", "M56 20H64M56 32H64M56 44H64"],
  ],
} as const satisfies Readonly<Record<string, readonly Stroke[]>>;
