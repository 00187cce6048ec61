import type { Part } from '../../build/schema/part.ts';
import { type Manner, sayInWords } from '../../report/sayFigure.ts';
import type { ShelfRow } from './protocol.ts';

/** A part as a picker lists it: the facts one chooses by, then mass and price. */
export function shelfRow(part: Part, manner: Manner): ShelfRow {
  const { amount, currency } = part.price;
  const price = `${sayInWords(amount / part.soldIn, 'money', { ...manner, currency })} each`;
  const mass = sayInWords(part.mass.value, 'mass', manner);
  return { id: part.id, kind: part.kind, name: part.name, says: [...facts(part), mass, price].join(', ') };
}

const millimetres = (length: number): string => `${+(length * 1000).toFixed(1)} mm`;

function facts(part: Part): readonly string[] {
  switch (part.kind) {
    case 'frame':
      return [
        part.layout.kind,
        `${millimetres(part.arms.thickness.value)} arms`,
        `up to ${+(part.maxPropeller / 0.0254).toFixed(1)} in`,
      ];
    case 'motor':
      return [`${Math.round((part.speedConstant.value * 30) / Math.PI)} rpm/V`];
    case 'propeller':
      return [`${part.size.bladeCount} blades`, part.material];
    case 'pack':
      return [
        `${part.cells}S ${part.chemistry}`,
        `${Math.round(part.capacity.value / 3.6)} mAh`,
        part.connector,
      ];
    case 'controller':
      return [part.form, sayInWords(part.current.value, 'current', { currency: '' })];
    default:
      return [];
  }
}
