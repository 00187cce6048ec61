/** The words a brief chooses among, apart from its schema: a page can offer them without the checker. */
export const PURPOSES = ['race', 'freestyle', 'guarded filming', 'cruising', 'micro'] as const;
export const REGIONS = ['EU', 'US', 'UK', 'other'] as const;
