/**
 * Length by which an end acts longer (soft clamp, positive) or shorter (held section, negative), for
 * each way of deforming [m].
 */
export interface EndLength {
  readonly axial: number;
  readonly outOfPlane: number;
  readonly inPlane: number;
  readonly torsion: number;
  readonly shearOutOfPlane: number;
  readonly shearInPlane: number;
}

/** An end that changes nothing: free, or plain beam theory's clamp. */
export const PLAIN_END: EndLength = {
  axial: 0,
  outOfPlane: 0,
  inPlane: 0,
  torsion: 0,
  shearOutOfPlane: 0,
  shearInPlane: 0,
};
