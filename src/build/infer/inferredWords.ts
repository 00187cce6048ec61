/** What is inferred when a part does not tell it, by its field, as a person says it. */
const WORDS: Readonly<Record<string, string>> = {
  mountCircles: 'circle of its holes',
  mountScrew: 'its screws',
  threadDepth: 'depth of its threads',
  shaft: 'shaft',
  fixing: 'how the propeller is held',
  bellDiameter: 'outer diameter',
  bore: 'hole',
  hubDiameter: 'hub across',
  hubThickness: 'hub height',
  inertia: 'inertia about the shaft',
  rootWidth: 'arm at the root',
  neckWidth: 'arm at its narrowest',
  tipWidth: 'arm at the tip',
  padDiameter: 'pad under the motor',
  clampedLength: 'length of an arm between the plates',
  bottomThickness: 'bottom plate',
  topThickness: 'top plate',
  standoffHeight: 'height of the standoffs',
  standoffCount: 'number of standoffs',
  'pack length': 'length of the room for the pack',
  'pack width': 'width of the room for the pack',
  flightController: 'flight controller',
  videoLink: 'video link',
};

/** What has no other name is said as it stands. */
export const inferredWords = (field: string): string => WORDS[field] ?? field;
