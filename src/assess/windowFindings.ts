import { formatQuantity } from '../units/formatQuantity.ts';
import type { Finding, Measure } from './types.ts';

const REMEDIES: Readonly<Record<string, readonly [below: string, above: string]>> = {
  'thrust-to-weight': [
    'More cells, larger propellers or less mass.',
    'A smaller pack of fewer cells or less pitch makes it calmer, cheaper and longer in the air.',
  ],
  'hover-throttle': [
    'It will be twitchy: less pitch, lower K_V or a throttle curve.',
    'Less mass, more pitch or diameter, or another cell.',
  ],
  'pack-share': [
    'A larger pack flies longer at little cost until it reaches a third of the mass.',
    // Momentum theory: hover time goes with m_pack / m^1.5, so d ln t / d ln m_pack = 1 - 1.5 x its share.
    'A smaller pack: at a third of the mass a heavier one brings half its own gain in minutes, at two thirds none, and it turns and crashes heavier.',
  ],
};

/** A finding for every measure outside its window, both ways, by how much of the band lies outside. */
export function windowFindings(measures: readonly Measure[]): readonly Finding[] {
  return measures.flatMap((measure): readonly Finding[] => {
    const { window, value } = measure;
    if (window === undefined || (value >= window.low && value <= window.high)) return [];
    const below = value < window.low;
    const limit = below ? window.low : window.high;
    const words = REMEDIES[measure.id];
    const show = (number: number) => formatQuantity(number, measure.quantity);
    const far = below ? value < 0.8 * window.low : value > 1.25 * window.high;
    const [low, high] = measure.band;
    const doubtful = below ? high > window.low : low < window.high;
    return [
      {
        id: `${measure.id}-window`,
        sheet: measure.sheet,
        severity: far && !doubtful && !harmless(measure.id, below) ? 'risk' : 'note',
        says: `${capital(measure.label)} is ${formatQuantity(value, measure.quantity, { band: measure.band })}, ${below ? 'under' : 'over'} the window of ${show(window.low)} to ${show(window.high)} for this purpose${doubtful ? '; the band reaches into it' : ''}.`,
        number: { value, limit, quantity: measure.quantity },
        remedy: words?.[below ? 0 : 1] ?? 'See what it leans on.',
        source: window.source,
        parts: measure.sheet === 'lift' ? ['motors', 'propellers', 'pack'] : ['pack'],
      },
    ];
  });
}

/** More thrust than the purpose asks costs money and minutes; it does not endanger. */
const harmless = (id: string, below: boolean): boolean => id === 'thrust-to-weight' && !below;

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
