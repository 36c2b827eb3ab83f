import { type Lengths, lengthsIn } from "../lengths/index.ts";
import { usePreferences } from "../stores/index.ts";

/** Lengths as this builder reads and types them: in mm, or in inches with fractions. */
export const useLengths = (): Lengths => usePreferences((preferences) => lengthsIn(preferences.units));
