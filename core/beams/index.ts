export { layBeam } from "./lay-beam.ts";
export type { Beam, BeamLoad, BeamSupport, LaidBeam } from "./types.ts";
