/** The ways of crashing that the forecast of knocks tells apart. */
export type KnockWay = 'flat' | 'end-on' | 'side-on' | 'prop strike';
