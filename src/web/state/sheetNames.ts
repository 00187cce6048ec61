/** Every sheet of the page, in the order of its tabs; plain, so that tests and scripts read it without a browser. */
export const SHEETS = [
  'choice',
  'brief',
  'shortlist',
  'airframe',
  'lift',
  'heat',
  'flight',
  'wind',
  'picture',
  'shake',
  'knocks',
  'money',
  'fit',
] as const;
