export { AirframeRound } from './AirframeRound.tsx';
export { HitRound } from './HitRound.tsx';
export { ModeRound } from './ModeRound.tsx';
