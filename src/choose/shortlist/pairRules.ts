/** The seats that a search chooses, in the order it goes down. */
export const SEARCHED = ['frame', 'motor', 'propeller', 'pack', 'electronics', 'camera'] as const;
export type Searched = (typeof SEARCHED)[number];

/**
 * Fit rules that look at two or three searched seats (and at what the template holds) only: such a rule gives
 * the same verdict for every combination of the other seats, so one look at a pair takes out, or marks with a risk,
 * every combination that holds it. What is declared here is tested against whole crafts. Rules that are not
 * listed wait for the whole craft: that is slower, never wrong.
 */
export const PAIR_RULES: readonly {
  readonly seats: readonly Searched[];
  readonly rules: readonly string[];
}[] = [
  {
    seats: ['frame', 'motor'],
    rules: ['motor-hole-circle', 'motor-screw-into-winding', 'motor-screw-short', 'motor-screw-thread'],
  },
  {
    seats: ['frame', 'propeller'],
    rules: [
      'propeller-too-large',
      'propeller-to-propeller-gap',
      'guard-tip-gap',
      'arm-thickness',
      'propeller-hands',
    ],
  },
  { seats: ['motor', 'propeller'], rules: ['propeller-bore', 'propeller-fixing'] },
  { seats: ['frame', 'pack'], rules: ['pack-length', 'pack-width', 'strap-length'] },
  { seats: ['motor', 'pack'], rules: ['motor-cells'] },
  {
    seats: ['frame', 'electronics'],
    rules: ['stack-pattern', 'stack-one-pattern', 'stack-headroom', 'controller-count'],
  },
  {
    seats: ['pack', 'electronics'],
    rules: ['controller-cells', 'flight-controller-cells', 'board-full-voltage', 'connector-match'],
  },
  { seats: ['pack', 'electronics', 'camera'], rules: ['serial-ports', 'supply-voltage', 'regulator-load'] },
  { seats: ['frame', 'camera'], rules: ['camera-width', 'flying-camera-mount'] },
];

/** Rules that look at the template and the brief only: their risks mark every combination alike. */
export const SHARED_RULES: readonly string[] = [
  'novice-wind',
  'video-power-legal',
  'pack-wear',
  'brief-names-unknown',
  'antenna-frequency',
];

/** Also a rule of the flying camera, when what must be carried is a camera. */
export const CARRIED_CAMERA_RULE = 'must-carry';

/**
 * Rules held against the least currents and the highest cell voltage that the drive bounds know: what they stop or
 * mark there they stop or mark anywhere, as their severity only rises with the current. The first list looks at
 * frame, motor, propeller and pack only; the second at the electronics too.
 */
export const CURRENT_RULES: readonly string[] = [
  'motor-current',
  'pack-current',
  'sag-at-full-throttle',
  'speed-constant-window',
];
export const FINISH_CURRENT_RULES: readonly string[] = ['controller-current', 'connector-current'];
