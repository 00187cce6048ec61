import type { ArmBeam } from './armBeam.ts';

/** Share of a cantilever's mass that moves with its tip (33/140, Rayleigh). */
const TIP_SHARE = 0.24;

/** What moves with an arm's tip: motor, propeller and a share of the arm [kg]. */
export const swayingMass = (beam: ArmBeam): number => (beam.tipBody?.mass ?? 0) + TIP_SHARE * beamMass(beam);

/** Of an arm at its narrowest, which is what most of its length is [kg]. */
const beamMass = ({ outline, density, thickness, length }: ArmBeam): number =>
  density * Math.min(...outline.map(({ width }) => width)) * thickness * length;
