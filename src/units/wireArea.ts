import { parseQuantity, type QuantityOutcome } from './parseQuantity.ts';

/**
 * Conductor section [m2] of an American wire gauge, whole gauges 0 to 40.
 * ASTM B258-18, section 4: diameter = 0.005 in * 92^((36 - gauge) / 39).
 */
export function wireGaugeArea(gauge: number): number {
  if (!(gauge >= 0 && gauge <= 40)) throw new RangeError(`gauge must be 0 to 40, got ${gauge}`);
  const diameter = 0.005 * 0.0254 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * diameter * diameter;
}

/** Reads a wire's conductor section, `"14 AWG"` or `"2.1 mm2"`, into [m2]. */
export function parseWireArea(text: string): QuantityOutcome {
  const match = text.length > 20 ? null : /^\s*(\d{1,2})\s*AWG\s*$/i.exec(text);
  if (match && Number(match[1]) <= 40) return { ok: true, value: wireGaugeArea(Number(match[1])) };
  const area = parseQuantity(text, 'area');
  if (area.ok) return area;
  return {
    ...area,
    allowed: 'a gauge from 0 AWG to 40 AWG, or a section in mm2',
    remedy: 'Write it like "14 AWG" or "2.1 mm2".',
  };
}
